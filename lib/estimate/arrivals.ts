/**
 * How many builds are still to come. A gamma-Poisson rate with forgetting, in its linear (Bühlmann)
 * form: the expected count of each five minutes is multiplied by 1 + day + wave, where `day` stays
 * and `wave` fades from slot to slot (the forgetting); both are learned from the counts so far by a
 * Kalman filter. What is left to come has a mean and a variance in closed form.
 */
import type { Spread } from '#lib/estimate/count-chances.ts'
import {
  type ServiceCounts,
  SLOT_MINUTES,
  slotsInto,
  slotsOf,
} from '#lib/estimate/service-counts.ts'

/** How much real counts stray from the expected ones; each is a relative standard deviation. */
export interface Straying {
  /** Of the whole day. */
  readonly day: number
  /** Of a wave, which fades by `keep` from slot to slot (0 to 1). */
  readonly wave: number
  readonly keep: number
  /** Of one slot by itself. */
  readonly slot: number
  /** How late or early a wave comes as a whole, as behind a bell: standard deviation in minutes. */
  readonly late: number
  /** Builds that come together: variance of a count by its mean, 1 or more. */
  readonly together: number
}

/** How much more or less than expected comes: relative, with covariances. */
interface Level {
  readonly day: number
  readonly wave: number
  readonly dayVar: number
  readonly waveVar: number
  readonly cov: number
}

/** Expected builds so far under which a slot says nothing. */
const LEAST_EXPECTED = 1e-6

const faded = (level: Level, { wave, keep }: Straying): Level => ({
  ...level,
  wave: level.wave * keep,
  waveVar: level.waveVar * keep * keep + wave * wave * (1 - keep * keep),
  cov: level.cov * keep,
})

/** Expected builds a minute where two slots meet. */
const paceBefore = (profile: Profile, slot: number): number => {
  const [before, after] = [profile[slot - 1], profile[slot]]
  return ((before ?? after ?? 0) + (after ?? before ?? 0)) / (2 * SLOT_MINUTES)
}

const observed = (
  level: Level,
  expected: number,
  shifted: number,
  count: number,
  straying: Straying,
): Level => {
  if (expected < LEAST_EXPECTED) return level
  const rate = Math.max(0.2, 1 + level.day + level.wave)
  const noise =
    straying.together * expected * rate +
    (straying.slot * expected * rate) ** 2 +
    (straying.late * shifted * rate) ** 2
  const withDay = expected * (level.dayVar + level.cov)
  const withWave = expected * (level.waveVar + level.cov)
  const variance = expected * (withDay + withWave) + noise
  const surprise = count - expected * (1 + level.day + level.wave)
  return {
    day: level.day + (withDay * surprise) / variance,
    wave: level.wave + (withWave * surprise) / variance,
    dayVar: level.dayVar - (withDay * withDay) / variance,
    waveVar: level.waveVar - (withWave * withWave) / variance,
    cov: level.cov - (withDay * withWave) / variance,
  }
}

/** Expected builds of each slot of the service, from its opening to its close. */
export type Profile = readonly number[]

export interface Horizon extends Spread {
  /** Minute of the day until which builds are counted. */
  readonly until: number
}

/**
 * Builds to come from `minute` on, cumulated to the end of each slot until close; the first entry is
 * now, with none, and before the doors open the second is their opening, with none. `counts` may hold what came after `minute`: only full slots before it and the part
 * of its own slot are read, the latter where `isLive` says that counting stopped at `minute`.
 */
export const buildsToCome = (
  counts: Pick<ServiceCounts, 'opens' | 'closes' | 'builds'>,
  profile: Profile,
  straying: Straying,
  minute: number,
  isLive: boolean,
): readonly Horizon[] => {
  const slots = slotsOf(counts)
  const into = slotsInto(counts, minute)
  const current = Math.min(slots, Math.floor(into))
  let level: Level = {
    day: 0,
    wave: 0,
    dayVar: straying.day ** 2,
    waveVar: straying.wave ** 2,
    cov: 0,
  }
  for (let slot = 0; slot < current; slot += 1) {
    const shifted = paceBefore(profile, slot + 1) - paceBefore(profile, slot)
    level = observed(level, profile[slot] ?? 0, shifted, counts.builds[slot] ?? 0, straying)
    level = faded(level, straying)
  }
  const part = into - current
  const paceNow =
    (1 - part) * paceBefore(profile, current) + part * paceBefore(profile, current + 1)
  if (isLive && part > 0) {
    const shifted = paceNow - paceBefore(profile, current)
    const expected = (profile[current] ?? 0) * part
    level = observed(level, expected, shifted, counts.builds[current] ?? 0, straying)
  }

  const horizons: Horizon[] = [{ until: minute, mean: 0, variance: 0 }]
  // Nobody is expected before the doors open.
  if (minute < counts.opens) horizons.push({ until: counts.opens, mean: 0, variance: 0 })
  let mean = 0
  let variance = 0
  let sumDay = 0
  let sumWave = 0
  for (let slot = current; slot < slots; slot += 1) {
    if (slot > current) {
      level = faded(level, straying)
      sumWave *= straying.keep
    }
    const expected = (profile[slot] ?? 0) * (slot === current ? 1 - part : 1)
    const rate = Math.max(0, 1 + level.day + level.wave)
    mean += expected * rate
    variance +=
      2 * expected * (sumDay + sumWave) +
      expected * expected * (level.dayVar + 2 * level.cov + level.waveVar) +
      straying.together * expected * rate +
      (straying.slot * expected * rate) ** 2
    sumDay += expected * (level.dayVar + level.cov)
    sumWave += expected * (level.waveVar + level.cov)
    // What comes later than expected comes after this horizon, and some of before now after now.
    const shifted = (paceBefore(profile, slot + 1) - paceNow) * rate
    horizons.push({
      until: Math.min(counts.closes, counts.opens + (slot + 1) * SLOT_MINUTES),
      mean,
      variance: Math.max(variance + (straying.late * shifted) ** 2, mean),
    })
  }
  return horizons
}

/** Builds to come until a minute of the day: between the ends of two slots, in proportion. */
export const buildsUntil = (horizons: readonly Horizon[], minute: number): Spread => {
  let before = horizons[0]
  for (const horizon of horizons) {
    if (horizon.until >= minute && before !== undefined) {
      const span = horizon.until - before.until
      const share = span > 0 ? Math.max(0, minute - before.until) / span : 1
      return {
        mean: before.mean + share * (horizon.mean - before.mean),
        variance: before.variance + share * (horizon.variance - before.variance),
      }
    }
    before = horizon
  }
  return { mean: before?.mean ?? 0, variance: before?.variance ?? 0 }
}
