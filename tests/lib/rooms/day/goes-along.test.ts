import { expect, it } from 'vitest'
import { goesAlong } from '#lib/rooms/day/facts/ends/goes-along.ts'
import { batchHeldBy } from '#lib/rooms/food/facts/batch-watch.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import { placeOf } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'
import { cooledBefore, minute } from '#tests/support/food.ts'
import { given, running } from '#tests/support/service.ts'

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
