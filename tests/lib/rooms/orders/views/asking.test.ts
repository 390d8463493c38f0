import { describe, expect, test } from 'vitest'
import { kitchenOf } from '#lib/rooms/care/facts/kitchen-of.ts'
import { EMPTY_DRAFT } from '#lib/rooms/orders/facts/draft.ts'
import { askTiles, MOST_TILES } from '#lib/rooms/orders/views/ask-tiles.ts'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import { act } from '#lib/rooms/orders/views/order-act.ts'
import { IDLE, type Ordering } from '#lib/rooms/orders/views/ordering.ts'
import { toAskOf } from '#lib/rooms/orders/views/to-ask-of.ts'
import { ALLERGEN_SETS } from '#lib/station/codes/allergen-sets.ts'
import { askableAllergens, kindsOf } from '#lib/station/codes/askable.ts'
import { CLAIMS, DIETS } from '#lib/station/codes/diets.ts'
import { verdictsFor } from '#tests/support/counter-verdicts.ts'
import { demoStation, ready, running } from '#tests/support/service.ts'

const STATE = running(ready())

const taps = (...list: Act[]): Ordering => list.reduce((so, one) => act(so, one, STATE), IDLE)
const needsAfter = (...list: Act[]) => taps(...list).drafts[0]?.needs
const nuts: Act = { act: 'need', code: 'tree-nuts' }
const kind = (code: string): Act => ({ act: 'kind', group: 'tree-nuts', code })

describe('what is asked about', () => {
  const us = { allergenSet: 'us-9', ownAllergens: ['kiwi'] } as const
  const eu = { allergenSet: 'eu-14', ownAllergens: [] } as const

  test('[C31] allergens stand in the order of the station’s set, then gluten, then diets', () => {
    const groups = ALLERGEN_SETS['us-9'].groups.map((one) => one.code)
    expect(askTiles(us).tiles).toEqual([
      ...groups,
      'gluten',
      ...['vegetarian', 'vegan', 'no-pork', 'halal', 'kosher', 'pescatarian', 'no-beef'],
    ])
    expect(askTiles(eu).tiles.slice(0, 14)).toEqual(
      ALLERGEN_SETS['eu-14'].groups.map((one) => one.code),
    )
    expect(askTiles(eu).tiles).toContain('vegan')
  })

  test('[C31] all that can be asked has one place, in sight or behind “more”', () => {
    for (const station of [us, eu, demoStation]) {
      const { tiles, more } = askTiles(station)
      const all = [...tiles, ...more]
      expect(tiles).toHaveLength(MOST_TILES)
      expect([...all].sort()).toEqual(
        [...new Set([...askableAllergens(station), ...DIETS, ...CLAIMS])].sort(),
      )
      expect(new Set(all).size).toBe(all.length)
    }
    expect(askTiles(us).more).toContain('kiwi')
  })
})

describe('asking closer', () => {
  test('[C32] one kind takes the group’s place, and the last one taken back gives it back', () => {
    expect(needsAfter(nuts)).toMatchObject([{ code: 'tree-nuts', handling: 'keep-apart' }])
    expect(needsAfter(nuts, kind('almond'))).toEqual([
      { code: 'almond', handling: 'keep-apart', reason: null },
    ])
    expect(needsAfter(nuts, kind('almond'), kind('cashew'))).toHaveLength(2)
    expect(needsAfter(nuts, kind('almond'), kind('almond'))).toMatchObject([{ code: 'tree-nuts' }])
  })

  test('[C32] a tap on a group’s tile takes all its kinds back', () => {
    expect(needsAfter(nuts, kind('almond'), kind('cashew'), nuts)).toEqual([])
    expect(kindsOf(demoStation, 'tree-nuts')).toContain('almond')
  })

  test('[C32] a diet can be kept apart, and a reason is told and taken back', () => {
    const vegan: Act = { act: 'need', code: 'vegan' }
    expect(needsAfter(vegan, { act: 'handling', code: 'vegan' })).toMatchObject([
      { handling: 'keep-apart' },
    ])
    const faith: Act = { act: 'reason', code: 'vegan', reason: 'faith' }
    expect(needsAfter(vegan, faith)).toMatchObject([{ reason: 'faith' }])
    expect(needsAfter(vegan, faith, faith)).toMatchObject([{ reason: null }])
  })
})

describe('celiac disease as a reason', () => {
  const coeliac = (code: string): Act => ({ act: 'reason', code, reason: 'coeliac' })
  const other = (code: string): Act => ({ act: 'handling', code })
  const gluten: Act = { act: 'need', code: 'gluten' }

  test('[C60] is keep apart when it is tapped, also of what was left out only', () => {
    expect(needsAfter(gluten, other('gluten'), coeliac('gluten'))).toEqual([
      { code: 'gluten', handling: 'keep-apart', reason: 'coeliac' },
    ])
    const vegan: Act = { act: 'need', code: 'vegan' }
    expect(needsAfter(vegan, coeliac('vegan'))).toMatchObject([{ handling: 'keep-apart' }])
    for (const reason of ['allergy', 'faith', 'diet', 'dislike'] as const)
      expect(needsAfter(vegan, { act: 'reason', code: 'vegan', reason })).toMatchObject([
        { handling: 'leave-out' },
      ])
  })

  test('[C60] leaves it to the guest to say otherwise, and taken back it weakens nothing', () => {
    expect(needsAfter(gluten, coeliac('gluten'), other('gluten'))).toEqual([
      { code: 'gluten', handling: 'leave-out', reason: 'coeliac' },
    ])
    expect(needsAfter(gluten, other('gluten'), coeliac('gluten'), coeliac('gluten'))).toEqual([
      { code: 'gluten', handling: 'keep-apart', reason: null },
    ])
  })

  const said: Act = { act: 'said-needs' }
  const asSaid: Act = { act: 'said-needs', isSaid: true }
  const leftOut = [gluten, coeliac('gluten'), other('gluten')]
  const draftOf = (order: Ordering) => order.drafts[0] ?? EMPTY_DRAFT

  test('[C74] left out only is asked once, and goes on only as the guest said', () => {
    const asked = taps(...leftOut, said)
    expect(asked.step).toBe('ask')
    expect(toAskOf(draftOf(asked))).toEqual(['gluten'])
    const on = taps(...leftOut, asSaid)
    expect(on.step).toBe('choose')
    expect(toAskOf(draftOf(on))).toEqual([])
    // Once: whoever comes back to it is asked no more, also where it was kept apart in between.
    const again = act(act(on, { act: 'ask-again' }, STATE), said, STATE)
    expect(again.step).toBe('choose')
    const turned = [other('gluten'), other('gluten'), said]
    expect(turned.reduce((so, one) => act(so, one, STATE), on).step).toBe('choose')
    const milk: Act = { act: 'need', code: 'milk' }
    const more = [{ act: 'ask-again' } as const, milk, coeliac('milk'), other('milk'), said]
    const next = more.reduce((so: Ordering, one: Act) => act(so, one, STATE), on)
    expect([next.step, toAskOf(draftOf(next))]).toEqual(['ask', ['milk']])
  })

  test('[C74] nothing is asked where it is kept apart, or for another reason', () => {
    expect(taps(gluten, coeliac('gluten'), said).step).toBe('choose')
    expect(taps(gluten, other('gluten'), said).step).toBe('choose')
    const allergy: Act = { act: 'reason', code: 'gluten', reason: 'allergy' }
    expect(taps(gluten, other('gluten'), allergy, said).step).toBe('choose')
    const apart = taps(...leftOut, said, other('gluten'), said)
    expect(apart.step).toBe('choose')
    expect(apart.drafts[0]?.needs).toMatchObject([{ handling: 'keep-apart' }])
  })

  test('[C74] a build for the same guest isn’t asked of again', () => {
    const two = taps(...leftOut, asSaid, { act: 'choose', item: 'harbor-tuna' }, { act: 'another' })
    const same = act(two, { act: 'same-guest', index: 0 }, STATE)
    expect(same.step).toBe('choose')
    expect(toAskOf(same.drafts[1] ?? EMPTY_DRAFT)).toEqual([])
  })

  test('[C60] is read by no verdict', () => {
    const kitchen = kitchenOf(STATE)
    for (const handling of ['keep-apart', 'leave-out'] as const)
      for (const code of ['gluten', 'wheat', 'barley'])
        expect(verdictsFor(kitchen, [{ code, handling, reason: 'coeliac' }])).toEqual(
          verdictsFor(kitchen, [{ code, handling, reason: null }]),
        )
  })
})
