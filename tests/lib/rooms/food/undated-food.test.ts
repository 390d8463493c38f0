import { describe, expect, it } from 'vitest'
import { lastsUntil } from '#lib/service/food-limits.ts'
import { EMPTY_STOCK } from '#lib/service/food-state.ts'
import { at, madeBefore, minute, read, until, whenAt } from '#tests/support/food.ts'
import {
  codeOf,
  type Given,
  given,
  ofPortions,
  openedService,
  refusalOf,
  running,
  type Told,
} from '#tests/support/service.ts'

describe('cold food without a date mark', () => {
  const tuna = (count: number) => ofPortions('tuna', count)
  /** Made today, and nobody said more of its days: enough of it for a pan and what is added. */
  const open = at(openedService(), 0, ...madeBefore('b-tuna', 'tuna', tuna(8)))
  const plain = (over: object = {}): Given => ({
    type: 'load',
    pan: 'pan-tuna',
    amount: tuna(8),
    batch: 'b-tuna',
    ...read(39),
    ...over,
  })
  // 2026-11-25 in Chicago ends at 06:00 UTC.
  const midnight = Date.parse('2026-11-26T06:00:00Z')
  const foodIn = ({ state }: Told) => state.pans['pan-tuna']?.food
  const kept = (told: Told) =>
    lastsUntil(running(told), running(told).pans['pan-tuna'] ?? EMPTY_STOCK)

  it('[B30] lasts until the midnight that ends the day on which it was loaded', () => {
    const told = at(open, 1, plain())
    expect(foodIn(told)).toMatchObject({ dateMark: null, dayEndsAt: midnight })
    expect(kept(told)).toBe(midnight)
    const read12 = (minutes: number): Given => ({
      type: 'readTemperature',
      what: 'pan',
      id: 'pan-tuna',
      ...read(39, { at: minute(minutes) }),
    })
    const last = (midnight - minute(0)) / 60_000
    const watched = Array.from({ length: Math.floor(last / 90) }, (_, index) => 90 * (index + 1))
    const evening = watched.reduce((so, one) => at(so, one, read12(one)), told)
    expect(until(evening, last - 1).state.toThrowOut).toEqual({})
    expect(until(evening, last).state.toThrowOut['pan/pan-tuna']).toMatchObject({ because: 'date' })
    expect(codeOf(whenAt(evening, last + 1, { type: 'close' }))).toBe('throw-out-first')
  })

  it('[B30] added to dated food ends with the day, and hot food has no such day', () => {
    const dated = at(open, 1, plain({ preparedOn: '2026-11-24' }))
    expect(foodIn(dated)).toMatchObject({ dateMark: { lastDay: '2026-11-30' } })
    expect(foodIn(dated)).not.toHaveProperty('dayEndsAt')
    const topUp: Given = {
      type: 'topUp',
      pan: 'pan-tuna',
      amount: tuna(4),
      batch: 'b-more',
      ...read(39),
    }
    expect(kept(at(dated, 2, ...madeBefore('b-more', 'tuna'), topUp))).toBe(midnight)
    expect(given().state.pans['pan-chicken']?.food).not.toHaveProperty('dayEndsAt')
  })

  it('[B30] the day that is told is not ahead, and not over', () => {
    const told = open
    expect(codeOf(whenAt(told, 1, plain({ preparedOn: '2026-11-26' })))).toBe('wrong-date')
    expect(refusalOf(whenAt(told, 1, plain({ preparedOn: '2026-11-18' })))).toMatchObject({
      code: 'cannot-load',
      problem: { code: 'past-date-mark', lastDay: '2026-11-24' },
    })
  })

  it('[B30] a batch that was started on an earlier day carries that day', () => {
    const batch = (startedAt: number, over: object = {}): readonly Given[] => [
      { type: 'startBatch', component: 'slaw', loads: 1, startedAt },
      { type: 'finishBatch', batch: 'b1', amount: 1_000_000, ...over },
    ]
    const markOf = ({ state }: Told) => state.batches.b1?.dateMark?.lastDay ?? null
    expect(markOf(at(openedService(), 1, ...batch(minute(-900))))).toBe('2026-11-30')
    expect(markOf(at(openedService(), 1, ...batch(minute(-60))))).toBeNull()
    const told = at(openedService(), 1, ...batch(minute(-900), { preparedOn: '2026-11-23' }))
    expect(markOf(told)).toBe('2026-11-29')
  })
})
