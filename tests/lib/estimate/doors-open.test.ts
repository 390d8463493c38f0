import { describe, expect, it } from 'vitest'
import { buildsToCome, buildsUntil, type Straying } from '#lib/estimate/arrivals.ts'
import { demandAhead, learnPast } from '#lib/estimate/demand-history.ts'
import { rushOf } from '#lib/estimate/rush.ts'
import { countBuild, noCounts, type ServiceCounts, total } from '#lib/estimate/service-counts.ts'
import { evolve } from '#lib/spine/evolve.ts'
import { demoStation, eventsOf, NOTHING, OPENED_AT, when } from '#tests/support/service.ts'

const DOORS = 690
const CLOSES = 750
const PROFILE = new Array<number>(12).fill(5)
const straying: Straying = { day: 0.2, wave: 0.3, keep: 0.7, slot: 0.2, late: 2, together: 1.3 }

const from = (doors: number, perSlot: readonly number[]): ServiceCounts => {
  let counts: ServiceCounts = { ...noCounts(doors, doors + 60, 60), doors: true }
  for (const [slot, builds] of perSlot.entries())
    for (let one = 0; one < builds; one += 1)
      counts = countBuild(counts, doors + slot * 5, { item: 'bowl', portions: { chicken: 1 } })
  return counts
}

describe('demand from the opening of the doors', () => {
  it('[Z71] before the doors open nobody is expected, and what is to come is as at the doors', () => {
    const counts = from(DOORS, [])
    const atDoors = buildsToCome(counts, PROFILE, straying, DOORS, true).at(-1)
    for (const early of [1, 15, 60, 240]) {
      const horizons = buildsToCome(counts, PROFILE, straying, DOORS - early, true)
      expect(buildsUntil(horizons, DOORS - early / 2)).toEqual({ mean: 0, variance: 0 })
      expect(buildsUntil(horizons, DOORS)).toEqual({ mean: 0, variance: 0 })
      expect(buildsUntil(horizons, DOORS + 5).mean).toBeCloseTo(5, 9)
      expect(horizons.at(-1)?.mean, `${early} minutes early`).toBeCloseTo(atDoors?.mean ?? 0, 9)
    }
  })

  it('[Z71] an hour of setting up isn’t an hour in which nobody came', () => {
    const late = buildsToCome(from(DOORS, [5]), PROFILE, straying, DOORS + 5, true)
    expect(buildsUntil(late, CLOSES).mean).toBeCloseTo(55, 6)
    const asOpening = { ...noCounts(DOORS - 60, CLOSES, 60), builds: from(DOORS, [5]).builds }
    const profile = [...new Array<number>(12).fill(0.1), ...PROFILE]
    const heard = buildsToCome(asOpening, profile, straying, DOORS, true)
    expect(buildsUntil(heard, CLOSES).mean).not.toBeCloseTo(60, 0)
  })

  it('[Z71] who orders before the doors open counts in their first five minutes', () => {
    const early = countBuild(from(DOORS, []), DOORS - 20, {
      item: 'bowl',
      portions: { chicken: 1 },
    })
    expect(early.builds).toEqual([1])
  })

  it('[Z71] a rush never lies before the doors', () => {
    const busy = rushOf([20, 1, 1, 1])
    expect(busy.isAt({ opens: DOORS }, DOORS)).toBe(true)
    expect(busy.isAt({ opens: DOORS }, DOORS - 1)).toBe(false)
  })

  it('[Z11] waves are expected so long after the doors, at whatever hour those open', () => {
    const past = Array.from({ length: 6 }, () => from(DOORS, [0, 0, 0, 20, 0, 0, 0, 0, 0, 0, 0, 0]))
    const taught = learnPast(past, { chicken: 1 })
    const ahead = (opens: number, doors: boolean) =>
      demandAhead(taught, {
        opens,
        closes: opens + 60,
        expected: null,
        ...(doors ? { doors } : {}),
      }).profile
    const highest = (profile: readonly number[]) => profile.indexOf(Math.max(...profile))
    expect(highest(ahead(DOORS + 30, true))).toBe(3)
    expect(highest(ahead(DOORS - 5, false))).toBe(4)
    expect(total(ahead(DOORS + 30, true))).toBeCloseTo(20, 6)
  })
})

describe('a service whose document says when the doors open', () => {
  const document = {
    ...demoStation,
    day: { ...demoStation.day, doors: { open: '13:30', close: '14:30' }, closes: null },
  }
  const opened = (closesAt?: string) => {
    const station = () => ({ revision: 3, document })
    const command = { type: 'open', station: 'alder-hall', kind: 'real' } as const
    return eventsOf(when(NOTHING, closesAt ? { ...command, closesAt } : command, { station }))
  }

  it('[Z71] counts from them, where they lie ahead', () => {
    const [event] = opened()
    if (event?.type !== 'serviceOpened') throw new Error('it wasn’t opened')
    expect(event.doorsAt).toBeGreaterThan(OPENED_AT)
    const state = evolve(NOTHING.state, { ...event, position: 1, at: OPENED_AT, command: 'c' })
    expect(state.counts).toMatchObject({ opens: 13 * 60 + 30, doors: true })
  })

  it('[Z71] counts from the opening, where the doors open after its end', () => {
    expect(opened('13:00')[0]).not.toHaveProperty('doorsAt')
  })
})
