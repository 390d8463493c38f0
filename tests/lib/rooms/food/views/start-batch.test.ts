import { describe, expect, test } from 'vitest'
import { needsBatch } from '#lib/rooms/food/facts/food-now.ts'
import { canStart, firstToStart, toStart } from '#lib/rooms/food/views/start-batch.ts'
import type { RunningState } from '#lib/service/state.ts'
import { given, running } from '#tests/support/service.ts'

/** The service with its pans empty, of a document that says of nothing how it is made again. */
const bare = (): RunningState => {
  const now = running(given())
  const components = now.station.components.map((one) => ({ ...one, remake: null }))
  const pans = Object.fromEntries(
    Object.entries(now.pans).map(([id, pan]) => [id, { ...pan, amount: 0 }]),
  )
  return { ...now, station: { ...now.station, components }, pans, batches: {} }
}

describe('what a batch can be started of', () => {
  test('[B41] is all that goes into no pan without one, also where nobody said how it is made again', () => {
    const state = bare()
    const { station } = state
    const ids = canStart(state).map(({ id }) => id)
    expect(ids).toEqual(station.components.filter(needsBatch).map(({ id }) => id))
    expect(ids).toContain('chicken')
    expect(ids).not.toContain('almonds')
  })

  test('[B41] where others have it said, food without is offered while its pans are empty', () => {
    const now = running(given())
    const unsaid = now.station.components.filter((one) => one.remake === null && needsBatch(one))
    const offered = (state: RunningState) =>
      canStart(state).filter((one) => unsaid.includes(one)).length
    expect(unsaid.length).toBeGreaterThan(0)
    expect(offered(now)).toBe(0)
    expect(offered({ ...now, pans: bare().pans })).toBe(unsaid.length)
  })

  test('[B41] the first offered has empty pans and no batch: one after the other is started', () => {
    const state = bare()
    const all = canStart(state).map(({ id }) => id)
    const offered: string[] = []
    let now = state
    for (let next = firstToStart(now); next !== null; next = firstToStart(now)) {
      offered.push(next)
      const batch = { ...Object.values(running(given()).batches)[0], component: next }
      now = { ...now, batches: { ...now.batches, [next]: batch } } as RunningState
    }
    expect(offered).toEqual(all)
    expect(toStart(state)).toEqual(all)
    expect(toStart(now)).toEqual([])
    expect(firstToStart(running(given()))).toBeNull()
  })
})
