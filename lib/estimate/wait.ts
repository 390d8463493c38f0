/**
 * The honest "about N min" for an order given now: from measured build times, the builds before it,
 * and the assemblers at work.
 */

/** Build times of this service, summed up; seconds. */
export interface BuildTimes {
  readonly count: number
  readonly sum: number
  readonly squares: number
}

/** Before the first build is measured: about a minute each. Common practice, no source. */
const FIRST_SECONDS = 60
const FIRST_SD = 25
/** How many measured builds that weighs as much as. */
const FIRST_WEIGHT = 3
/** An older build weighs this much of one newer by one: about the last twenty count. */
const FADE = 0.95
/** A build that took longer was left lying, and isn't what a build takes. */
const LONGEST_SECONDS = 900

export const NO_BUILD_TIMES: BuildTimes = { count: 0, sum: 0, squares: 0 }

/** Counts a build's seconds from start to finish; what is no build time is left out. */
export const withBuildTime = (times: BuildTimes, seconds: number): BuildTimes =>
  seconds > 0 && seconds <= LONGEST_SECONDS
    ? {
        count: times.count * FADE + 1,
        sum: times.sum * FADE + seconds,
        squares: times.squares * FADE + seconds * seconds,
      }
    : times

export const buildTime = ({
  count,
  sum,
  squares,
}: BuildTimes): { readonly mean: number; readonly sd: number } => {
  const weight = count + FIRST_WEIGHT
  const mean = (sum + FIRST_WEIGHT * FIRST_SECONDS) / weight
  const square = (squares + FIRST_WEIGHT * (FIRST_SECONDS ** 2 + FIRST_SD ** 2)) / weight
  return { mean, sd: Math.sqrt(Math.max(1, square - mean * mean)) }
}

export interface Wait {
  /** Seconds until the order is made: the middle, and the range that holds it 8 times of 10. */
  readonly seconds: number
  readonly early: number
  readonly late: number
  /** Whole minutes to say, at least 1; equal where one number says it. */
  readonly minutes: readonly [number, number]
}

/** 10 percent lie beyond this many standard deviations on either side. */
const TEN = 1.2816

/**
 * How long an order of `own` builds takes that is given now, with `before` builds waiting and
 * `making` in the making (half done, on the average). Null without an assembler.
 */
export const waitFor = (
  times: BuildTimes,
  queue: { readonly before: number; readonly making: number; readonly own: number },
  assemblers: number,
): Wait | null => {
  if (assemblers < 1) return null
  const { mean, sd } = buildTime(times)
  const own = Math.max(1, queue.own)
  // The last of its builds starts when all but the last few before it are done.
  const ahead = queue.making / 2 + queue.before + own - 1
  const started = Math.max(0, ahead - (assemblers - 1) / 2) / assemblers
  const isFree = queue.making + queue.before + own <= assemblers
  const seconds = (isFree ? 0 : started * mean) + mean
  const unsureMean = sd / Math.sqrt(times.count + FIRST_WEIGHT)
  const spread = Math.sqrt(
    (isFree ? 0 : (started / assemblers) * sd * sd + (started * unsureMean) ** 2) + sd * sd,
  )
  const early = Math.max(mean / 2, seconds - TEN * spread)
  const late = seconds + TEN * spread
  const low = Math.max(1, Math.round(early / 60))
  const high = Math.max(low, Math.ceil(late / 60 - 0.25))
  const middle = Math.max(1, Math.round(seconds / 60))
  return {
    seconds,
    early,
    late,
    minutes: high - low <= 1 ? [middle, middle] : [low, high],
  }
}
