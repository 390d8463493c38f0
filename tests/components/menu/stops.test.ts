import { describe, expect, it } from 'vitest'
import {
  setDown,
  stopBeside,
  stopNow,
  stopsOf,
  stopUnder,
  type WellPlan,
} from '#components/menu/line/stops.ts'

const third = (pan: string) => ({ pan, size: 'third' as const })
const wells: readonly WellPlan[] = [
  { well: 'hot', pans: [third('chili'), third('beans')] },
  { well: 'full', pans: [{ pan: 'rice', size: 'full' }] },
  { well: 'cold', pans: [] },
]

describe('a pan in the hand', () => {
  it('stops before and after each other pan where it fits, and once where it does not', () => {
    expect(stopsOf(wells, third('chili'))).toEqual([
      { well: 'hot', at: 0, fits: true },
      { well: 'hot', at: 1, fits: true },
      { well: 'full', at: 1, fits: false },
      { well: 'cold', at: 0, fits: true },
    ])
  })

  it('goes from stop to stop, and stays at the ends of the line', () => {
    const stops = stopsOf(wells, third('chili'))
    const now = stopNow(wells, 'chili')
    expect(now).toEqual({ well: 'hot', at: 0, fits: true })
    expect(stopBeside(stops, now, -1)).toEqual(now)
    const next = stopBeside(stops, now, 1)
    expect(next).toEqual({ well: 'hot', at: 1, fits: true })
    expect(stopBeside(stops, stops.at(-1) ?? null, 1)).toEqual(stops.at(-1))
    expect(stopBeside(stops, null, 1)).toEqual(stops[0])
    expect(stopNow(wells, 'corn')).toBeNull()
  })

  it('is set down where it stops, and leaves the line as it is where it does not fit', () => {
    const pan = third('chili')
    const [, after, none, cold] = stopsOf(wells, pan)
    if (!after || !none || !cold) throw new Error('there are four stops')
    const named = (plan: readonly WellPlan[]) => plan.map(({ pans }) => pans.map((one) => one.pan))
    expect(named(setDown(wells, pan, after))).toEqual([['beans', 'chili'], ['rice'], []])
    expect(named(setDown(wells, pan, cold))).toEqual([['beans'], ['rice'], ['chili']])
    expect(named(setDown(wells, pan, none))).toEqual([['beans'], ['rice'], []])
  })

  it('stops under the pointer by the middles of the others', () => {
    const stops = stopsOf(wells, third('chili'))
    expect(stopUnder(stops, 'hot', 0.1, [0.17])?.at).toBe(0)
    expect(stopUnder(stops, 'hot', 0.5, [0.17])?.at).toBe(1)
    expect(stopUnder(stops, 'full', 0.1, [0.5])).toEqual({ well: 'full', at: 1, fits: false })
    expect(stopUnder(stops, 'none', 0.1, [])).toBeNull()
  })
})
