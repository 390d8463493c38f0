import { describe, expect, test } from 'vitest'
import type { LotFood } from '#lib/larder/lot.ts'
import { countedOn, type PlannedDay } from '#lib/rooms/prep/facts/counted-on.ts'
import { toldPar } from '#lib/rooms/prep/facts/told-par.ts'
import { parEn } from '#lib/rooms/prep/words/par-en.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import { portionsOf } from '#lib/station/portion.ts'
import { coldRice, larderAfter, setAside } from '#tests/support/larder.ts'
import { at } from '#tests/support/readings.ts'
import { demoStation } from '#tests/support/service.ts'

const portions = portionsOf(demoStation)
const one = portions.rice?.amount ?? 0
const NOW = at('15:00')
const food: Partial<LotFood> = {
  madeOf: ['brown-rice'],
  from: { service: 'lunch', station: demoStation.id, what: 'batch', id: 'b1' },
}
/** Lots of rice, each so many portions, set aside on 1 October. */
const larderOf = (...lots: readonly number[]) =>
  larderAfter(
    lots.map(
      (count, index) =>
        [at('14:30'), setAside(`lot-${index}`, coldRice(food), count * one)] as const,
    ),
  )
const planned = (on: string, expected: number | null): PlannedDay => ({
  state: { station: demoStation, portions, batches: {} },
  plan: {
    ...{ on, items: null },
    opensAt: Date.parse(`${on}T16:00:00Z`),
    closesAt: Date.parse(`${on}T18:00:00Z`),
  },
  ...{ expected, past: [] },
})
/** Rice of the larder that was taken into it. */
const takenIn = (count: number): BatchState => ({
  ...{ component: 'rice', loads: 1, loadsDone: 1, startedAt: NOW, finishedAt: NOW, loaded: 0 },
  ...{ amount: count * one, lot: 'lot-9', cooking: [], cooked: true, cooling: [], readings: [] },
  ...{ cooledAgain: false, reheat: null, clock: null, dateMark: null, toldAt: NOW, newestAt: NOW },
  ...{ offSale: null, thrownOutAt: null },
})
const friday = planned('2026-10-02', 40)
const monday = planned('2026-10-05', 40)
const mondays = (larder: ReturnType<typeof larderOf>, before: readonly PlannedDay[]) =>
  toldPar({ ...monday, before, larder, yields: {}, now: NOW }).rice

describe('two planned services and one larder', () => {
  test('[PR20] what a service before it counts on isn’t counted on again, and it is said for which day', () => {
    const larder = larderOf(10, 10)
    const alone = mondays(larder, [])
    const after = mondays(larder, [friday])
    expect(alone?.atHand).toMatchObject({ portions: 20, promised: [], others: 0 })
    expect(after?.atHand).toMatchObject({
      ...{ lots: [], portions: 0, others: 0 },
      promised: [{ on: '2026-10-02', lots: 2 }],
    })
    expect(after?.loads).toBeGreaterThan(alone?.loads ?? 99)
    expect(parEn.promised('2026-10-06', 2)).toBe('2 lots in the larder are for Tuesday’s service')
    expect(parEn.promised('2026-10-02', 1)).toBe('1 lot in the larder is for Friday’s service')
  })

  test('[PR20] what it can hardly use is left for the next: whole lots, what goes first first', () => {
    const larder = larderOf(60, 60, 60)
    expect(Object.keys(countedOn([friday], larder, NOW))).toEqual(['lot-0'])
    expect(countedOn([friday, monday], larder, NOW)).toEqual({
      ...{ 'lot-0': '2026-10-02', 'lot-1': '2026-10-05' },
    })
    expect(mondays(larder, [friday])?.atHand).toMatchObject({ portions: 120 })
  })

  test('[PR20] what it can’t use it doesn’t count on: sold without it, or no longer good by then', () => {
    const without = (items: readonly string[]) => ({ ...friday, plan: { ...friday.plan, items } })
    const ricers = demoStation.items.filter(
      ({ base, parts }) =>
        base?.choices.includes('rice') || parts.some(({ component }) => component === 'rice'),
    )
    const others = demoStation.items.filter((item) => !ricers.includes(item))
    const counted = (items: typeof ricers) =>
      Object.keys(countedOn([without(items.map(({ id }) => id))], larderOf(9), NOW))
    expect(ricers.length).toBeGreaterThan(0)
    expect(counted(ricers)).toEqual(['lot-0'])
    expect(counted(others)).toEqual([])
    expect(countedOn([planned('2026-10-09', 40)], larderOf(9), NOW)).toEqual({})
  })

  test('[PR22] what was taken out of the larder for a service is its own: still taken off, and it counts on less', () => {
    const batch = takenIn(20)
    const holding = { ...monday, state: { ...monday.state, batches: { b1: batch } } }
    const before: readonly PlannedDay[] = []
    const asked = { before, larder: larderOf(), yields: {}, now: NOW }
    const has = toldPar({ ...holding, ...asked }).rice
    const hasNot = toldPar({ ...monday, ...asked }).rice
    expect(has?.taken).toBe(20)
    expect(has?.loads).toBeLessThan(hasNot?.loads ?? 0)
    expect(parEn.taken(20)).toBe('Taken from the larder for it already: 20')
    const thrown = { ...batch, thrownOutAt: NOW }
    const after = { ...monday, state: { ...monday.state, batches: { b1: thrown } } }
    expect(toldPar({ ...after, ...asked }).rice?.taken).toBe(0)
    // Its last day ends before the doors close.
    const old = { ...batch, dateMark: { lastDay: '2026-10-04', endsAt: monday.plan.closesAt - 1 } }
    const dated = { ...monday, state: { ...monday.state, batches: { b1: old } } }
    expect(toldPar({ ...dated, ...asked }).rice?.taken).toBe(0)
    const full = { ...monday, state: { ...monday.state, batches: { b1: takenIn(200) } } }
    expect(countedOn([full], larderOf(9), NOW)).toEqual({})
  })
})
