import { describe, expect, it } from 'vitest'
import { EMPTY_DRAFT } from '#lib/rooms/orders/facts/draft.ts'
import { lacksTold } from '#lib/rooms/orders/views/lacks-told.ts'
import { lacksWords } from '#lib/rooms/orders/words/lacks-en.ts'
import { nameIn } from '#lib/station/name-in.ts'
import { sayRefusal } from '#lib/words/refusals-en.ts'
import {
  change,
  choose,
  codeOf,
  demoStation,
  type Given,
  given,
  ofPortions,
  onward,
  refusalOf,
  send,
  when,
} from '#tests/support/service.ts'

const correct = (component: string, count: number): Given => ({
  type: 'correct',
  pan: `pan-${component}`,
  amount: ofPortions(component, count),
})
const stop = (what: 'component' | 'item', id: string): Given => ({ type: 'stopSelling', what, id })

/** One portion of tuna, no slaw, cheddar not sold. */
const few = given(correct('tuna', 1), correct('slaw', 0), stop('component', 'cheddar'))

describe('what an order lacks', () => {
  it('[S95] is told all at once, build by build, an earlier build filled first', () => {
    const order = send(
      choose('harbor-tuna', { slaw: 'in', cheddar: 'in' }),
      choose('harbor-tuna', { slaw: 'no', cheddar: 'no' }),
    )
    expect(refusalOf(when(few, order))).toEqual({
      code: 'lacks',
      lacks: [
        { letter: 'A', code: 'not-selling', what: 'component', id: 'cheddar' },
        { letter: 'A', code: 'sold-out', component: 'slaw' },
        { letter: 'B', code: 'sold-out', component: 'tuna' },
      ],
    })
  })

  it('[S95] one by itself is told by its own code', () => {
    const order = send(choose('harbor-tuna', { slaw: 'in', cheddar: 'no' }))
    expect(refusalOf(when(few, order))).toEqual({ code: 'sold-out', component: 'slaw' })
  })

  it('[S95] of what a build can’t have nothing is missing to a later one', () => {
    const two = given(correct('tuna', 2), correct('slaw', 1))
    const order = send(
      choose('harbor-tuna', { slaw: 2, cheddar: 'no' }),
      choose('harbor-tuna', { slaw: 1, cheddar: 'no' }),
    )
    expect(refusalOf(when(two, order))).toEqual({ code: 'sold-out', component: 'slaw' })
    const alone = send(choose('harbor-tuna', { slaw: 1, cheddar: 'no' }))
    expect(codeOf(when(two, alone))).toBeNull()
  })

  it('[S95] counts what is kept for others, of each build that asks for it', () => {
    const kept = onward(given(correct('slaw', 0)), {
      type: 'keep',
      component: 'tuna',
      portions: 15,
      for: ['kept-apart'],
    })
    const build = choose('harbor-tuna', { slaw: 'in', cheddar: 'no' })
    expect(refusalOf(when(kept, send(build, build)))).toEqual({
      code: 'lacks',
      lacks: [
        { letter: 'A', code: 'sold-out', component: 'slaw' },
        { letter: 'B', code: 'sold-out', component: 'slaw' },
        { letter: 'B', code: 'kept', component: 'tuna', for: ['kept-apart'] },
      ],
    })
  })

  it('[S95] of an item that isn’t sold is nothing but that', () => {
    const stopped = onward(few, stop('item', 'harbor-tuna'))
    const order = send(choose('harbor-tuna', { slaw: 'in', cheddar: 'in' }))
    expect(refusalOf(when(stopped, order))).toEqual({
      code: 'not-selling',
      what: 'item',
      id: 'harbor-tuna',
    })
  })

  it('[S95] to be changed is told at once too', () => {
    const sent = onward(few, send(choose('harbor-tuna', { slaw: 'no', cheddar: 'no' })))
    const to = choose('harbor-tuna', { slaw: 'in', cheddar: 'in' })
    expect(refusalOf(when(sent, change('1A', to)))).toEqual({
      code: 'lacks',
      lacks: [
        { letter: 'A', code: 'not-selling', what: 'component', id: 'cheddar' },
        { letter: 'A', code: 'sold-out', component: 'slaw' },
      ],
    })
  })

  it('[S96] is said with what to do about each', () => {
    const refusal = {
      code: 'lacks',
      lacks: [
        { letter: 'A', code: 'sold-out', component: 'cheddar' },
        { letter: 'A', code: 'sold-out', component: 'pita' },
        { letter: 'B', code: 'past-throw-out-by-then', component: 'tuna', at: 0 },
        { letter: 'C', code: 'not-selling', what: 'item', id: 'bean-and-pepper' },
      ],
    } as const
    const drafts = ['garden-chicken', 'harbor-tuna', 'bean-and-pepper'].map((item) => ({
      ...EMPTY_DRAFT,
      item,
    }))
    const told = lacksTold(demoStation, refusal, drafts) ?? []
    expect(told.map(({ letter, item }) => [letter, item])).toEqual([
      ['A', 'garden-chicken'],
      ['B', 'harbor-tuna'],
      ['C', 'bean-and-pepper'],
    ])
    expect(told.flatMap(({ lacks }) => lacks.map(({ way }) => way))).toEqual([
      'leave-out',
      'other-base',
      'other-item',
      'other-item',
    ])
    const name = nameIn(demoStation)
    const said = told.flatMap(({ lacks }) =>
      lacks.map(({ lack, way }) => lacksWords.lack(lack, way, name, () => '1:05 PM')),
    )
    expect(said[0]).toBe('Cheddar: not enough left. Leave it out, or take less.')
    expect(said[2]).toMatch(/ends at 1:05 PM, before this would be made. Choose another item.$/)
    expect(sayRefusal(refusal, name)).toMatch(/^A: Not enough Cheddar is left.* B: /)
  })

  it('[S96] a stored answer of before, with one code, is told as ever', () => {
    const stored: unknown = JSON.parse('{"code":"sold-out","component":"cheddar"}')
    const refusal = stored as Parameters<typeof sayRefusal>[0]
    expect(lacksTold(demoStation, refusal, [])).toBeNull()
    expect(sayRefusal(refusal, nameIn(demoStation))).toMatch(/^Not enough Cheddar is left/)
  })
})
