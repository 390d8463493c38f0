import { describe, expect, it } from 'vitest'
import {
  choose,
  codeOf,
  eventsOf,
  type Given,
  given,
  onward,
  refusalOf,
  send,
  when,
} from '#tests/support/service.ts'

const stop = (what: 'component' | 'item', id: string): Given => ({ type: 'stopSelling', what, id })
const resume = (what: 'component' | 'item', id: string): Given => ({
  type: 'resumeSelling',
  what,
  id,
})

describe('selling', () => {
  it('[S52] of a component stops: no build takes it, on the side either, until it is resumed', () => {
    const stopped = onward(given(), stop('component', 'peppers'))
    const refusal = { code: 'not-selling', what: 'component', id: 'peppers' }
    expect(refusalOf(when(stopped, send(choose('garden-chicken'))))).toEqual(refusal)
    expect(refusalOf(when(stopped, send(choose('garden-chicken', { peppers: 'side' }))))).toEqual(
      refusal,
    )
    expect(codeOf(when(stopped, send(choose('garden-chicken', { peppers: 'no' }))))).toBeNull()
    expect(
      codeOf(when(onward(stopped, resume('component', 'peppers')), send(choose('garden-chicken')))),
    ).toBeNull()
  })

  it('[S52] of a base stops the builds that take it', () => {
    const stopped = onward(given(), stop('component', 'pita'))
    expect(codeOf(when(stopped, send(choose('harbor-tuna'))))).toBe('not-selling')
    expect(codeOf(when(stopped, send(choose('harbor-tuna', {}, { base: 'rice' }))))).toBeNull()
  })

  it('[S53] of an item stops, and its components are sold in the others', () => {
    const stopped = onward(given(), stop('item', 'garden-chicken'))
    expect(refusalOf(when(stopped, send(choose('garden-chicken'))))).toEqual({
      code: 'not-selling',
      what: 'item',
      id: 'garden-chicken',
    })
    expect(codeOf(when(stopped, send(choose('harbor-tuna'))))).toBeNull()
    expect(
      codeOf(
        when(onward(stopped, resume('item', 'garden-chicken')), send(choose('garden-chicken'))),
      ),
    ).toBeNull()
  })

  it.each(['component', 'item'] as const)(
    '[S54] of a %s is stopped once and resumed once, and only of what there is',
    (what) => {
      const id = what === 'item' ? 'harbor-tuna' : 'tuna'
      expect(codeOf(when(given(), resume(what, id)))).toBe('already-so')
      const stopped = onward(given(), stop(what, id))
      expect(codeOf(when(stopped, stop(what, id)))).toBe('already-so')
      expect(onward(stopped, resume(what, id)).state.notSelling).toEqual({
        component: {},
        item: {},
      })
      expect(refusalOf(when(given(), stop(what, 'kale')))).toEqual({
        code: 'unknown',
        what,
        id: 'kale',
      })
      expect(refusalOf(when(given(), stop(what, 'constructor')))).toEqual({
        code: 'unknown',
        what,
        id: 'constructor',
      })
    },
  )

  it('keeps since when', () => {
    expect(eventsOf(when(given(), stop('item', 'harbor-tuna')))).toEqual([
      { type: 'sellingStopped', what: 'item', id: 'harbor-tuna' },
    ])
    const { state } = onward(given(), stop('item', 'harbor-tuna'))
    expect(state.notSelling.item).toEqual({ 'harbor-tuna': state.at })
  })
})
