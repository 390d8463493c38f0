/**
 * Whether a day can have wanted as many builds as its record says, by the guests who were expected and
 * by the other days. What was sold beside something that is gone says little where nearly all want
 * that: one wrong tap then counts as dozens of guests. The farther the two are apart, the likelier the
 * record is wrong, and then the other days alone tell (a mixture for outliers: A. Gelman and others,
 * Bayesian Data Analysis, chapter 17; from memory). Where both can be true the record alone counts,
 * since days are weighed against each other where their size is learned.
 */
import { normalUpTo, type Spread } from '#lib/estimate/count-chances.ts'

/** A past day before it is weighed against the others. */
export interface DayGuess {
  /** Guests; null where nobody said. */
  readonly expected: number | null
  /** Builds sold, and guests who are known to have found nothing. */
  readonly seen: number
  /** Those that nobody saw, as far as what was sold beside tells. */
  readonly lost: Spread
  /** All ran out: it says nothing of what others wanted. */
  readonly atLeast: boolean
}

/** Builds of a guest, and those of a day against those of others: relative standard deviations. Common practice, no source. */
const A_GUEST = 0.25
const A_DAY = 0.3
/** No day wanted more than so many times what was expected of it or seen on any day. */
export const MOST_TIMES = 2
/** Nor more than so many builds beside what was seen; more than one line makes in a day. */
export const MOST_LOST = 2_000
/** Of the records of days so many are wrong, before they are read. Common practice, no source. */
const WRONG = 0.05
const ROUNDS = 6

const sumOf = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0)

const isSaid = ({ expected }: DayGuess): boolean => expected !== null && expected > 0

/** What each day is compared by, as a logarithm: its guests, or a middling day's where nobody said. */
const basesOf = (days: readonly DayGuess[]): readonly number[] => {
  const said = days.flatMap((day) => (isSaid(day) ? [Math.log(day.expected ?? 1)] : []))
  const middle = said.length > 0 ? sumOf(said) / said.length : 0
  return days.map((day) => (isSaid(day) ? Math.log(day.expected ?? 1) : middle))
}

/** Most builds that a day can have lost beside those seen. */
const mostLost = (days: readonly DayGuess[], { expected, seen }: DayGuess): number => {
  const largest = Math.max(expected ?? 0, ...days.map((one) => one.seen))
  return Math.min(MOST_LOST, Math.max(0, MOST_TIMES * largest - seen))
}

const density = (z: number): number => Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI)

/** What is left of a normal value where it can't be below 0. */
const notBelowNone = ({ mean, variance }: Spread): Spread => {
  const sd = Math.sqrt(variance)
  const z = Math.max(-4, mean / sd)
  const pull = density(z) / normalUpTo(z)
  return {
    mean: Math.max(0, mean + sd * pull),
    variance: variance * Math.min(1, Math.max(0.01, 1 - z * pull - pull * pull)),
  }
}

const bounded = ({ mean, variance }: Spread, most: number): Spread => ({
  mean: Math.min(most, Math.max(0, mean)),
  variance: Math.min(most ** 2, variance),
})

/** `usual`: what the other days say that it lost, as a normal value. */
const weighed = (beside: Spread, usual: Spread, most: number): Spread => {
  const variance = beside.variance + usual.variance
  const off = usual.mean - beside.mean
  const right = ((1 - WRONG) * density(off / Math.sqrt(variance))) / Math.sqrt(variance)
  const wrong = WRONG / Math.max(1, most)
  const share = right / (right + wrong)
  const told = bounded(beside, most)
  const alone = notBelowNone(usual)
  return {
    mean: share * told.mean + (1 - share) * alone.mean,
    variance:
      share * told.variance +
      (1 - share) * alone.variance +
      share * (1 - share) * (told.mean - alone.mean) ** 2,
  }
}

/**
 * What each day lost that nobody saw, 0 or more, as far as that is plausible: at most MOST_TIMES the
 * guests expected or the builds seen on the largest day, less what was seen of it. Cost grows with the days.
 */
export const plausiblyLost = (days: readonly DayGuess[]): readonly Spread[] => {
  const bases = basesOf(days)
  const most = days.map((day) => mostLost(days, day))
  const first = days.some(isSaid) ? 1 / A_GUEST ** 2 : 0
  let lost: readonly Spread[] = days.map((day, index) => bounded(day.lost, most[index] ?? 0))
  for (let round = 0; round < ROUNDS; round += 1) {
    const each = days.map(({ seen, atLeast }, index) => {
      const { mean, variance } = lost[index] ?? { mean: 0, variance: 0 }
      const builds = Math.max(1, seen + mean)
      if (atLeast || seen <= 0) return { sure: 0, told: 0 }
      const sure = 1 / (A_DAY ** 2 + variance / builds ** 2)
      return { sure, told: sure * (Math.log(builds) - (bases[index] ?? 0)) }
    })
    const [sure, told] = [sumOf(each.map((one) => one.sure)), sumOf(each.map((one) => one.told))]
    lost = days.map((day, index) => {
      if (day.lost.mean <= 0) return { mean: 0, variance: 0 }
      const others = first + sure - (each[index]?.sure ?? 0)
      if (others <= 1e-9) return bounded(day.lost, most[index] ?? 0)
      const level = (told - (each[index]?.told ?? 0)) / others
      const builds = Math.exp((bases[index] ?? 0) + level)
      const variance = builds ** 2 * (A_DAY ** 2 + 1 / others)
      const own = weighed(day.lost, { mean: builds - day.seen, variance }, most[index] ?? 0)
      return bounded(own, most[index] ?? 0)
    })
  }
  return lost
}
