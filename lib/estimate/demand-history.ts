/**
 * What past services teach about the one to come: how many builds when, how far real counts stray
 * from that, and how often a component is taken. Only service records are read.
 */
import { buildsToCome, type Profile, type Straying } from '#lib/estimate/arrivals.ts'
import { logCountChance } from '#lib/estimate/count-chances.ts'
import type { TakenShare } from '#lib/estimate/demand.ts'
import { type ServiceCounts, SLOT_MINUTES, slotsOf, total } from '#lib/estimate/service-counts.ts'
import { choose, FEWEST, shareOf } from '#lib/estimate/share-history.ts'

/** Guests who come together at a time that is known; they are among the guests expected. */
export interface TimedGroup {
  /** Minute of the civil day. */
  readonly minute: number
  readonly guests: number
}

/** The service to forecast. */
export interface ServiceAhead
  extends Pick<ServiceCounts, 'opens' | 'closes' | 'expected' | 'doors'> {
  /** Left away where none has a time. */
  readonly groups?: readonly TimedGroup[]
}

export interface DemandModel {
  readonly profile: Profile
  readonly straying: Straying
  readonly shares: Readonly<Record<string, TakenShare>>
}

/** Where nothing is known: what a first service may do. Common practice, no source. */
const FIRST_STRAYING: Straying = {
  day: 0.3,
  wave: 0.5,
  keep: 0.7,
  slot: 0.4,
  late: 2,
  together: 1.3,
}
/** Builds an hour where neither guests expected nor a past service tells. */
const FIRST_BUILDS_AN_HOUR = 40

/**
 * A count of a past service at the slots of the one ahead: from the doors of one to the doors of the
 * other, and by the time of day where they aren't known of both.
 */
const aligned = (
  { opens, doors }: ServiceCounts,
  list: readonly number[],
  ahead: ServiceAhead,
): number[] => {
  const shift = doors && ahead.doors ? 0 : Math.round((ahead.opens - opens) / SLOT_MINUTES)
  return Array.from({ length: slotsOf(ahead) }, (_, slot) => list[slot + shift] ?? 0)
}

const meanOf = (values: readonly number[]): number =>
  values.length > 0 ? total(values) / values.length : 0

/** Relative standard deviation that errors show, as if two more had been of 25 percent. */
const strayOf = (errors: readonly number[]): number => {
  const squares = errors.reduce((sum, error) => sum + error * error, 2 * 0.25 ** 2)
  return Math.sqrt(squares / (errors.length + 2))
}

/** Builds expected in all, by past services and the guests expected, weighed by how well each told. */
const totalAhead = (others: readonly ServiceCounts[], expected: number | null): number | null => {
  if (others.length === 0) return expected
  const totals = others.map(({ builds }) => total(builds))
  const usual = meanOf(totals)
  const told = others.flatMap(({ builds, expected: said }) =>
    said !== null && said > 0 ? [total(builds) / said] : [],
  )
  if (expected === null) return usual
  const aGuest = told.length > 0 ? meanOf(told) : 1
  const byGuests = expected * aGuest
  const byPast = strayOf(totals.map((one) => one / Math.max(1, usual) - 1)) ** -2
  const byTold = strayOf(told.map((ratio) => ratio / Math.max(0.01, aGuest) - 1)) ** -2
  return (usual * byPast + byGuests * byTold) / (byPast + byTold)
}

/** Share of a whole that is spread evenly, so that a time when nobody ever came stays possible. */
const EVEN = 0.02

/** Part of each slot that one past day spreads to either neighbour; many days need less of it. */
const SIDE = 0.15

/**
 * Builds of the groups that come at a known time, in the five minutes in which they come: as many as
 * their part of the guests expected makes of all, none of a group before the doors or after the close.
 */
const timedBuilds = (ahead: ServiceAhead, all: number): number[] => {
  const slots = slotsOf(ahead)
  const timed: number[] = new Array(slots).fill(0)
  const { expected, groups = [], opens } = ahead
  if (expected === null || expected <= 0) return timed
  for (const { minute, guests } of groups) {
    const slot = Math.floor((minute - opens) / SLOT_MINUTES)
    if (slot >= 0 && slot < slots)
      timed[slot] = (timed[slot] ?? 0) + (all * Math.max(0, guests)) / expected
  }
  const whole = total(timed)
  return whole > all ? timed.map((one) => (one * all) / whole) : timed
}

/** The expected builds of each slot, smoothed over its neighbours as far as few days make it rough. */
const profileAhead = (others: readonly ServiceCounts[], ahead: ServiceAhead): Profile => {
  const slots = slotsOf(ahead)
  const all =
    totalAhead(others, ahead.expected) ?? (FIRST_BUILDS_AN_HOUR * (ahead.closes - ahead.opens)) / 60
  const sums: number[] = new Array(slots).fill(0)
  for (const one of others)
    for (const [slot, count] of aligned(one, one.builds, ahead).entries())
      sums[slot] = (sums[slot] ?? 0) + Math.max(0, count)
  const side = (SIDE * FEWEST) / (FEWEST - 1 + Math.max(1, others.length))
  const smooth = sums.map(
    (sum, slot) =>
      (1 - 2 * side) * sum + side * ((sums[slot - 1] ?? sum) + (sums[slot + 1] ?? sum)),
  )
  const whole = total(smooth)
  const timed = timedBuilds(ahead, all)
  const rest = all - total(timed)
  return smooth.map(
    (sum, slot) =>
      (timed[slot] ?? 0) +
      rest * (whole > 0 ? (1 - EVEN) * (sum / whole) + EVEN / slots : 1 / slots),
  )
}

const STRAYINGS: readonly Straying[] = [0.06, 0.12, 0.2, 0.32].flatMap((day) =>
  [
    { wave: 0, keep: 0.5 },
    { wave: 0.2, keep: 0.6 },
    { wave: 0.2, keep: 0.85 },
    { wave: 0.4, keep: 0.6 },
    { wave: 0.4, keep: 0.85 },
  ].flatMap((fading) =>
    [0, 0.3].flatMap((slot) =>
      [0, 2].flatMap((late) =>
        [1.1, 1.6, 2.2].map((together) => ({ day, ...fading, slot, late, together })),
      ),
    ),
  ),
)

/** Parts of a service after which each past one is forecast, to see how well that would have gone. */
const LOOKS = [0, 0.25, 0.45, 0.65, 0.85]

/** The straying under which the past services, each forecast from the others, are likeliest. */
const strayingOf = (past: readonly ServiceCounts[]): Straying => {
  if (past.length < FEWEST) return FIRST_STRAYING
  const cases = past.map((one) => ({
    one,
    profile: profileAhead(
      past.filter((other) => other !== one),
      one,
    ),
  }))
  const score = (straying: Straying): number => {
    let sum = 0
    for (const { one, profile } of cases)
      for (const look of LOOKS) {
        const from = Math.floor(slotsOf(one) * look)
        const horizons = buildsToCome(
          one,
          profile,
          straying,
          one.opens + from * SLOT_MINUTES,
          false,
        )
        // To close and to halfway there, since batches are planned over both.
        for (const reach of [horizons.length - 1, Math.ceil((horizons.length - 1) / 2)]) {
          const ahead = horizons[reach]
          const came = total(one.builds.slice(from, from + reach))
          if (ahead && reach > 0) sum += logCountChance(Math.max(0, came), ahead)
        }
      }
    return sum
  }
  return choose(STRAYINGS, score) ?? FIRST_STRAYING
}

/** What past services teach that holds for any service ahead: learned once, since it takes a while. */
export interface PastTaught {
  readonly past: readonly ServiceCounts[]
  readonly straying: Straying
  readonly shares: Readonly<Record<string, TakenShare>>
}

/**
 * `firstShares` names every component and how often a build would take it if nothing were known
 * (0 to 1).
 */
export const learnPast = (
  past: readonly ServiceCounts[],
  firstShares: Readonly<Record<string, number>>,
): PastTaught => ({
  past,
  straying: strayingOf(past),
  shares: Object.fromEntries(
    Object.entries(firstShares).map(([component, first]) => [
      component,
      shareOf(past, component, first),
    ]),
  ),
})

/** What is expected of a service, by what past ones taught and the guests expected. */
export const demandAhead = (
  { past, straying, shares }: PastTaught,
  ahead: ServiceAhead,
): DemandModel => ({ profile: profileAhead(past, ahead), straying, shares })
