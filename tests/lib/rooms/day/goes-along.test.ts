import { describe, expect, it } from 'vitest'
import { thawedMark } from '#lib/larder/days.ts'
import type { Frozen } from '#lib/larder/lot.ts'
import { goesAlong } from '#lib/rooms/day/facts/ends/goes-along.ts'
import { batchHeldBy } from '#lib/rooms/food/facts/batch-watch.ts'
import { toldMark } from '#lib/rooms/food/facts/dated.ts'
import { coolingState } from '#lib/safety/cooling.ts'
import { dateMark } from '#lib/safety/date-marks.ts'
import { MODEL_CODE } from '#lib/safety/limits.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import { placeOf } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'
import { cooledBefore, minute, read, whenAt } from '#tests/support/food.ts'
import { coldRice } from '#tests/support/larder.ts'
import { type Given, given, happening, refusalOf, running } from '#tests/support/service.ts'

/** Rice that was cooked and cooled, and is served cold out of its pan. */
const servedCold = (): RunningState => {
  const state = running(given(...cooledBefore('cold-rice', 'rice')))
  const { station, pans } = state
  const pan = pans['pan-rice']
  if (!pan?.food) throw new Error('no rice in its pan')
  const components = station.components.map((one) =>
    one.id === 'rice' ? { ...one, held: 'cold' as const } : one,
  )
  const food = { ...pan.food, heldBy: 'cold' as const }
  return {
    ...state,
    station: { ...station, components },
    pans: { ...pans, 'pan-rice': { ...pan, batches: ['cold-rice'], food } },
  }
}

it('[LA58] of what was cooked and cooled, its cooling goes along out of a cold pan too: it is cold, not hot', () => {
  const state = servedCold()
  const place = placeOf(state, { what: 'pan', id: 'pan-rice' })
  if (!place) throw new Error('no pan of rice')
  const told = { end: 'cold', mark: null, reading: null, presentUntil: undefined } as const
  const along = goesAlong(state, place, { ...told, now: minute(1) })
  expect(along.cooling).toEqual(state.batches['cold-rice']?.cooling)
  const batch: BatchState = {
    ...(state.batches['cold-rice'] as BatchState),
    cooking: along.cooking,
    cooling: along.cooling,
  }
  expect(batchHeldBy(state.station, batch, minute(1))).toBe('cold')
})

describe('of what was mixed and cooled from room temperature, out of a pan', () => {
  const stays = { presentUntil: minute(90) }
  const mixed = (batch: string, finishedAt: number): readonly Given[] => [
    { type: 'startBatch', batch, component: 'tuna', loads: 1, startedAt: minute(finishedAt - 20) },
    { type: 'finishBatch', batch, amount: 500_000, finishedAt: minute(finishedAt) },
    ...[65, 40].map((degrees, nth): Given => {
      const reading = read(degrees, { at: minute(finishedAt + 30 + 90 * nth) })
      return { type: 'recordCooling', batch, ...reading, ...stays }
    }),
  ]
  const state = running(given(...mixed('old', -400), ...mixed('new', -130)))
  const out = (...batches: readonly string[]) => {
    const pan = state.pans['pan-tuna']
    if (!pan?.food) throw new Error('no tuna in its pan')
    const food = { ...pan.food, finishedAt: minute(-130) }
    const pans = { ...state.pans, 'pan-tuna': { ...pan, batches, food } }
    const place = placeOf({ ...state, pans }, { what: 'pan', id: 'pan-tuna' })
    if (!place) throw new Error('no pan of tuna')
    const told = { end: 'cold', mark: null, reading: null, presentUntil: undefined } as const
    return goesAlong({ ...state, pans }, place, { ...told, now: minute(1) })
  }
  const cooled = ({ cooling, coolingFrom, finishedAt }: ReturnType<typeof out>) =>
    coolingState(cooling, coolingFrom, minute(1), MODEL_CODE, finishedAt).state

  it('[EN9] [F23] of one batch its cooling goes along, counted from when it was made', () => {
    const along = out('new')
    expect(along).toMatchObject({ coolingFrom: 'room', finishedAt: minute(-130) })
    expect(along.cooling).toHaveLength(2)
    expect(cooled(along)).toBe('cooled')
  })

  it('[EN9] [F23] of two ages none does, which would be held against the older', () => {
    expect(out('old', 'new')).toMatchObject({ finishedAt: minute(-400), cooling: [] })
  })
})

describe('frozen at the close on the day of its thawing', () => {
  const taken = (frozen: Frozen) => {
    const dateMark = thawedMark({ under: coldRice().under, frozen }, '2026-11-25')
    const food = coldRice({ component: 'slaw', dateMark, readings: [] })
    const event = { type: 'foodTaken', batch: 'b9', lot: 'lot-a', amount: 900_000, food } as const
    return happening(given(), [event])
  }
  const freeze = (frozen: Frozen) =>
    whenAt(taken(frozen), 1, {
      type: 'endFood',
      what: 'batch',
      id: 'b9',
      end: 'freeze',
      amount: 900_000,
      how: 'weighed',
      lot: 'lot-b',
      ...read(38, { at: minute(1) }),
    })

  it('[F28] that day is used, as its date mark says', () => {
    expect(freeze({ on: '2026-11-03', daysLeft: 5, useBy: null })).toMatchObject({
      events: [{}, { end: 'freeze', along: { frozen: { on: '2026-11-25', daysLeft: 4 } } }],
    })
    const days = { preparedOn: '2026-11-01', useBy: null }
    const freezings = [
      { frozenOn: '2026-11-03', thawedOn: '2026-11-25' },
      { frozenOn: '2026-11-25', thawedOn: null },
    ]
    expect(dateMark({ ...days, freezings }, MODEL_CODE)).toEqual({ mark: 'frozen', daysLeft: 4 })
  })

  it('[LA59] the maker’s use-by goes along once more', () => {
    expect(freeze({ on: '2026-11-03', daysLeft: 5, useBy: '2026-11-27' })).toMatchObject({
      events: [{}, { along: { frozen: { daysLeft: 2, useBy: '2026-11-27' } } }],
    })
  })

  it('[F28] with no day left after it, it isn’t frozen', () => {
    expect(refusalOf(freeze({ on: '2026-11-03', daysLeft: 1, useBy: null }))).toMatchObject({
      code: 'end-not-offered',
      why: 'no-days-left',
      paragraph: '3-501.18(A)',
    })
  })

  it('[F28] told as thawed today as it was loaded, it is the same', () => {
    const freezing = { frozenOn: '2026-11-03', thawedOn: '2026-11-25' }
    const told = toldMark(running(given()), { preparedOn: '2026-11-01', freezing }, minute(1))
    expect(told).toMatchObject({ mark: { lastDay: '2026-11-29', thawedOn: '2026-11-25' } })
  })
})
