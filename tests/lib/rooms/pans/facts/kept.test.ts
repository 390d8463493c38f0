import { describe, expect, it } from 'vitest'
import { portionsKept } from '#lib/rooms/pans/facts/kept.ts'
import { itemLeft, levelsOf, sellable } from '#lib/rooms/pans/facts/levels.ts'
import {
  at,
  choice,
  codeOf,
  deciding,
  type Given,
  give,
  order,
  refusalOf,
  type Stocked,
  stocked,
} from '#tests/support/stock.ts'

const keep = (portions: number, ...whom: string[]): Given => ({
  type: 'keep',
  component: 'chicken',
  portions,
  for: whom,
})
const free = ({ state }: Stocked, item?: string) =>
  sellable(state, levelsOf(state), 'chicken', item ?? null)
const kept = ({ state }: Stocked): number => {
  const found = state.keeps.chicken
  return found ? portionsKept(found) : 0
}

describe('what is kept', () => {
  const told = give(stocked({ chicken: 6 }), 5, keep(4, 'garden-chicken'))

  it('[U7] is free for its item only, and the others see what is left to them', () => {
    expect(free(told, 'garden-chicken')).toBe(6)
    expect(free(told)).toBe(2)
    expect(free(told, 'harbor-tuna')).toBe(2)
    expect(itemLeft(told.state, levelsOf(told.state), 'garden-chicken').remaining).toBe(6)
  })

  it('[U7] isn’t sold to others, and its own orders take it', () => {
    let so = told
    for (let index = 0; index < 6; index += 1) so = give(so, 6, order(choice('garden-chicken')))
    expect(kept(so)).toBe(0)
    expect(codeOf(deciding(so, order(choice('garden-chicken'))))).toBe('sold-out')
  })

  it('[U7] for a need or for keeping apart is sold to guests who have it', () => {
    const vegan = { code: 'vegetarian', handling: 'leave-out', reason: 'diet' } as const
    const beans = (over = {}) => choice('bean-and-pepper', {}, over)
    const few = give(stocked({ beans: 2 }), 5, {
      type: 'keep',
      component: 'beans',
      portions: 2,
      for: ['vegetarian'],
    })
    expect(refusalOf(deciding(few, order(beans())))).toEqual({
      code: 'kept',
      component: 'beans',
      for: ['vegetarian'],
    })
    const asked = { asked: 'needs', needs: [vegan], agreed: true } as const
    expect(codeOf(deciding(few, order(beans(asked))))).not.toBe('kept')
    const apart = give(stocked({ beans: 2 }), 5, {
      type: 'keep',
      component: 'beans',
      portions: 2,
      for: ['kept-apart'],
    })
    const keptApart = { ...vegan, handling: 'keep-apart' } as const
    expect(codeOf(deciding(apart, order(beans(asked))))).toBe('kept')
    expect(codeOf(deciding(apart, order(beans({ ...asked, needs: [keptApart] }))))).not.toBe('kept')
  })

  it('[U8] goes down with its orders, and comes back with a change or a cancel', () => {
    const sent = give(told, 6, order(choice('garden-chicken')))
    expect(kept(sent)).toBe(3)
    expect(kept(give(sent, 7, { type: 'cancel', ...at('1A') }))).toBe(4)
    const changed = give(sent, 7, {
      type: 'change',
      ...at('1A'),
      to: choice('harbor-tuna'),
      readBack: true,
    })
    expect(kept(changed)).toBe(4)
  })

  it('[U8] isn’t taken from by orders that were sent before', () => {
    const before = give(stocked({ chicken: 6 }), 5, order(choice('garden-chicken')))
    const so = give(before, 6, keep(4, 'garden-chicken'))
    expect(kept(so)).toBe(4)
    expect(kept(give(so, 7, { type: 'cancel', ...at('1A') }))).toBe(4)
  })

  it('[U9] for what nobody can order is refused', () => {
    expect(refusalOf(deciding(stocked(), keep(4, 'harbour-pie')))).toEqual({
      code: 'unknown',
      what: 'order',
      id: 'harbour-pie',
    })
    expect(
      codeOf(deciding(stocked(), { type: 'keep', component: 'kale', portions: 1, for: ['milk'] })),
    ).toBe('unknown component')
  })

  it('[U9] again says anew how many and for whom, until it is ended', () => {
    const again = give(told, 8, keep(1, 'harbor-tuna', 'kept-apart'))
    expect(again.state.keeps.chicken).toMatchObject({
      portions: 1,
      for: ['harbor-tuna', 'kept-apart'],
    })
    const ended = give(again, 9, { type: 'endKeep', component: 'chicken' })
    expect(ended.state.keeps).toEqual({})
    expect(codeOf(deciding(ended, { type: 'endKeep', component: 'chicken' }))).toBe('already-so')
    expect(codeOf(deciding(ended, { type: 'endKeep', component: 'kale' }))).toBe(
      'unknown component',
    )
  })
})
