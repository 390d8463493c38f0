import { describe, expect, it } from 'vitest'
import { goesAlong } from '#lib/rooms/day/facts/ends/goes-along.ts'
import { batchHeldBy } from '#lib/rooms/food/facts/batch-watch.ts'
import { coolingState } from '#lib/safety/cooling.ts'
import { MODEL_CODE } from '#lib/safety/limits.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import { placeOf } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'
import { cooledBefore, minute, read } from '#tests/support/food.ts'
import { type Given, given, running } from '#tests/support/service.ts'

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
