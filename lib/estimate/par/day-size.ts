/**
 * How many builds a day will want: a regression of the logarithm of past counts with Gaussian priors
 * (Gaussian process, C. E. Rasmussen and C. K. I. Williams, Gaussian Processes for Machine Learning,
 * 2006, algorithm 2.1; from memory). A guest makes about one build; how far guests that were
 * expected tell, the weekday and a slow drift are each drawn to nothing where few days speak for
 * them. A day on which all ran out counts as at least as many (Tobit, by expectation; from memory).
 */
import { normalUpTo } from '#lib/estimate/count-chances.ts'
import { type DayAhead, dayNumber, weekdayOf } from '#lib/estimate/par/past-day.ts'
import { TOGETHER } from '#lib/estimate/par/wanted-builds.ts'

/** What is known of a past day's builds. */
export interface SizedDay {
  readonly on: string
  readonly expected: number | null
  /** Builds that were wanted, as far as the day tells. */
  readonly wanted: number
  /** Variance of those of them that nobody saw. */
  readonly unsure: number
  /** All ran out: more may have been wanted. */
  readonly atLeast: boolean
}

/** One way in which days may stray, and what it expects of the day ahead: of the logarithm of builds. */
export interface SizeCase {
  readonly weight: number
  readonly mean: number
  readonly sd: number
}

export interface DaySize {
  readonly cases: readonly SizeCase[]
}

/** How sure it is from the start: of builds a guest, and of how far guests that are said tell. */
const FIRST_SD = 0.25
const SLOPE_SD = 0.5
/** Where guests were said of some days and not of one, that one tells less. */
const UNSAID_SD = 0.15
/** A drift is forgotten over so many days. */
const DRIFT_DAYS = 28
/** Tastes of the grid: relative standard deviations. Common practice, no source. */
const DAYS = [0.08, 0.13, 0.2, 0.3]
const WEEKDAYS = [0, 0.1, 0.22]
const DRIFTS = [0, 0.12]
/** From day to day guests stray by about so much before any day tells; its spread as a logarithm. */
const USUAL_DAY = 0.2
const USUAL_DAY_SPREAD = 0.5
const MOST_DAYS = 30
const ROUNDS = 2

interface Known {
  readonly base: number
  readonly guests: number
  readonly isSaid: boolean
  readonly weekday: number
  readonly day: number
}

type Hyper = { readonly day: number; readonly weekday: number; readonly drift: number }

const shared = (one: Known, other: Known, { weekday, drift }: Hyper): number =>
  FIRST_SD ** 2 +
  SLOPE_SD ** 2 * one.guests * other.guests +
  (one.weekday === other.weekday ? weekday ** 2 : 0) +
  drift ** 2 * Math.exp(-Math.abs(one.day - other.day) / DRIFT_DAYS)

/** Lower triangle of a positive definite matrix's root, row by row. */
const rootOf = (matrix: readonly (readonly number[])[]): number[][] => {
  const root: number[][] = []
  for (const [i, row] of matrix.entries()) {
    const own: number[] = []
    for (let j = 0; j <= i; j += 1) {
      let sum = row[j] ?? 0
      const other = j === i ? own : (root[j] ?? [])
      for (let k = 0; k < j; k += 1) sum -= (own[k] ?? 0) * (other[k] ?? 0)
      own.push(j === i ? Math.sqrt(Math.max(1e-12, sum)) : sum / (other[j] ?? 1))
    }
    root.push(own)
  }
  return root
}

const solvedDown = (root: readonly (readonly number[])[], values: readonly number[]): number[] => {
  const solved: number[] = []
  for (const [i, row] of root.entries()) {
    let sum = values[i] ?? 0
    for (let k = 0; k < i; k += 1) sum -= (row[k] ?? 0) * (solved[k] ?? 0)
    solved.push(sum / (row[i] ?? 1))
  }
  return solved
}

const solvedUp = (root: readonly (readonly number[])[], values: readonly number[]): number[] => {
  const solved: number[] = [...values]
  for (let i = root.length - 1; i >= 0; i -= 1) {
    let sum = solved[i] ?? 0
    for (let k = i + 1; k < root.length; k += 1) sum -= (root[k]?.[i] ?? 0) * (solved[k] ?? 0)
    solved[i] = sum / (root[i]?.[i] ?? 1)
  }
  return solved
}

interface Fit {
  readonly logChance: number
  /** Of each past day: the level that it is taken to have had. */
  readonly levels: readonly number[]
  readonly mean: number
  readonly sd: number
}

const fitted = (
  past: readonly Known[],
  ahead: Known,
  values: readonly number[],
  noise: readonly number[],
  hyper: Hyper,
): Fit => {
  const own = past.map((one) => past.map((other) => shared(one, other, hyper)))
  const spread = own.map((row, i) =>
    row.map((value, j) => value + (i === j ? hyper.day ** 2 + (noise[i] ?? 0) : 0)),
  )
  const root = rootOf(spread)
  const half = solvedDown(root, values)
  const weights = solvedUp(root, half)
  const across = past.map((one) => shared(one, ahead, hyper))
  const told = solvedDown(root, across)
  const dot = (a: readonly number[], b: readonly number[]): number =>
    a.reduce((sum, value, index) => sum + value * (b[index] ?? 0), 0)
  const variance = shared(ahead, ahead, hyper) - dot(told, told) + hyper.day ** 2
  const logRoot = root.reduce((sum, row, i) => sum + Math.log(row[i] ?? 1), 0)
  const off = Math.log(hyper.day / USUAL_DAY) / USUAL_DAY_SPREAD
  return {
    logChance: -0.5 * dot(half, half) - logRoot - 0.5 * off * off,
    levels: own.map((row) => dot(row, weights)),
    mean: dot(across, weights),
    sd: Math.sqrt(Math.max(1e-6, variance) + (ahead.isSaid ? 0 : UNSAID_SD ** 2)),
  }
}

/** Mean of a normal value that is known to be at least so much, and its variance as a share. */
const above = (mean: number, sd: number, least: number): { mean: number; variance: number } => {
  const z = (least - mean) / sd
  const chance = Math.max(1e-9, 1 - normalUpTo(z))
  const pull = Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI) / chance
  const share = Math.min(1, Math.max(0.05, 1 + z * pull - pull * pull))
  return { mean: Math.max(least, mean + sd * pull), variance: sd * sd * share }
}

const meanLog = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + Math.log(value), 0) / values.length

/** The builds of the day ahead. Cost grows with the third power of the days, of which it reads forty. */
export const daySize = (days: readonly SizedDay[], ahead: DayAhead): DaySize => {
  const past = days.slice(-MOST_DAYS)
  const said = past.flatMap(({ expected }) => (expected !== null && expected > 0 ? [expected] : []))
  const everSaid = said.length > 0 || (ahead.expected ?? 0) > 0
  const middle = said.length > 0 ? meanLog(said) : Math.log(Math.max(1, ahead.expected ?? 1))
  const unsaid = past.flatMap(({ expected, wanted }) =>
    expected === null ? [Math.max(0.5, wanted)] : [],
  )
  const usual = everSaid
    ? middle
    : unsaid.length > 0
      ? meanLog(unsaid)
      : Math.log(ahead.firstBuilds)
  const known = ({ on, expected }: Pick<SizedDay, 'on' | 'expected'>): Known => {
    const guests = expected !== null && expected > 0 ? Math.log(expected) : null
    return {
      base: guests ?? usual,
      guests: guests === null ? 0 : guests - middle,
      isSaid: guests !== null || !everSaid,
      weekday: weekdayOf(on),
      day: dayNumber(on),
    }
  }
  const before = past.map(known)
  const next = known(ahead)
  const sold = past.map(({ wanted }, index) => {
    return Math.log(Math.max(0.5, wanted)) - (before[index]?.base ?? 0)
  })
  const counted = past.map(
    ({ wanted, unsure }, index) =>
      TOGETHER / Math.max(1, wanted) +
      unsure / Math.max(1, wanted) ** 2 +
      (before[index]?.isSaid ? 0 : UNSAID_SD ** 2),
  )
  let values = sold
  let noise = counted
  const hypers = DAYS.flatMap((day) =>
    WEEKDAYS.flatMap((weekday) => DRIFTS.map((drift): Hyper => ({ day, weekday, drift }))),
  )
  let weighed: { fit: Fit; hyper: Hyper; weight: number }[] = []
  const isAny = past.some(({ atLeast }) => atLeast)
  for (let round = 0; round <= (isAny ? ROUNDS : 0); round += 1) {
    const fits = hypers.map((hyper) => ({ fit: fitted(before, next, values, noise, hyper), hyper }))
    const best = Math.max(...fits.map(({ fit }) => fit.logChance))
    const chances = fits.map(({ fit }) => Math.exp(fit.logChance - best))
    const all = chances.reduce((sum, one) => sum + one, 0)
    weighed = fits.map((one, index) => ({ ...one, weight: (chances[index] ?? 0) / all }))
    if (!isAny || round === ROUNDS) break
    const level = past.map((_, index) =>
      weighed.reduce((sum, { fit, weight }) => sum + weight * (fit.levels[index] ?? 0), 0),
    )
    const stray = weighed.reduce((sum, { hyper, weight }) => sum + weight * hyper.day, 0)
    const more = past.map(({ atLeast }, index) => {
      if (!atLeast) return null
      const sd = Math.sqrt(stray ** 2 + (counted[index] ?? 0))
      return above(level[index] ?? 0, sd, sold[index] ?? 0)
    })
    values = sold.map((value, index) => more[index]?.mean ?? value)
    noise = counted.map((value, index) => value + (more[index]?.variance ?? 0))
  }
  return {
    cases: weighed.map(({ fit, weight }) => ({ weight, mean: next.base + fit.mean, sd: fit.sd })),
  }
}
