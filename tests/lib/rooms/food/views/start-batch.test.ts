import { describe, expect, test } from 'vitest'
import { needsBatch } from '#lib/rooms/food/facts/food-now.ts'
import { canStart, firstToStart, loadsPlanned, toStart } from '#lib/rooms/food/views/start-batch.ts'
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

describe('the loads of a planned service', () => {
  const foods = [{ component: 'chicken', loads: 3, portions: 36 }]
  const batch = Object.values(running(given()).batches)[0]
  const of = (...loads: readonly number[]): Pick<RunningState, 'prep' | 'batches'> => ({
    prep: { foods, ownTable: false, from: 0, ticked: {}, passed: {} },
    batches: Object.fromEntries(
      loads.map((count, index) => [
        `b${index}`,
        { ...batch, component: 'chicken', loads: count, thrownOutAt: null },
      ]),
    ) as RunningState['batches'],
  })

  test('[B41] those that nobody has started are filled in, and never fewer than none', () => {
    expect(loadsPlanned(of(), 'chicken')).toBe(3)
    expect(loadsPlanned(of(1), 'chicken')).toBe(2)
    expect(loadsPlanned(of(2, 2), 'chicken')).toBe(0)
  })

  test('[B41] what was thrown out is to be made again', () => {
    const { batches } = of(3)
    const [only] = Object.values(batches)
    const out = { b0: { ...only, thrownOutAt: 1 } } as RunningState['batches']
    expect(loadsPlanned({ ...of(3), batches: out }, 'chicken')).toBe(3)
  })

  test('[LA56] what came out of the larder is no load of the plan, which counts it already', () => {
    const { batches } = of(1, 1)
    const lot = { ...batches, b1: { ...batches.b1, lot: 'lot-a' } } as RunningState['batches']
    expect(loadsPlanned({ ...of(), batches: lot }, 'chicken')).toBe(2)
  })

  test('[B41] what isn’t in its plan says nothing', () => {
    expect(loadsPlanned(of(), 'slaw')).toBeNull()
    expect(loadsPlanned({ batches: {} }, 'chicken')).toBeNull()
  })

  test('[B41] the first offered is one of whose planned loads some are to be made, half started or not', () => {
    const planned = (...loads: readonly number[]): RunningState => ({
      ...running(given()),
      ...of(...loads),
      stage: 'planned',
    })
    expect(firstToStart(planned())).toBe('chicken')
    expect(firstToStart(planned(1))).toBe('chicken')
    expect(firstToStart(planned(3))).toBeNull()
  })
})
