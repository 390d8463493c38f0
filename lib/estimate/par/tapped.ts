/**
 * How many guests a day lost that nobody saw. One who finds something gone taps it with a chance of
 * which nothing is known from the start; what days lost as far as what was sold beside tells, and how
 * often somebody tapped on them, say how likely each chance is, and that how many each day lost (an
 * unknown chance shared by days, each with a crew of its own: beta-binomial, by Bayes on a grid; A.
 * Gelman and others, Bayesian Data Analysis, chapter 5; from memory).
 */
import { countChances, type Spread } from '#lib/estimate/count-chances.ts'

/** What a day lost before its taps are read, and how often somebody tapped. */
export interface Unsold extends Spread {
  readonly taps: number
}

const TAPS = Array.from({ length: 12 }, (_, index) => (index + 0.5) / 12)
/** As many guests as a day's own crew is known by before any comes. Common practice, no source. */
const ALIKE = 8

interface Given {
  /** How likely the taps are. */
  readonly chance: number
  readonly sum: number
  readonly square: number
}

/** Of one day, where one taps with a chance: the guests lost, weighed by how likely its taps are then. */
const given = (chances: Float64Array, taps: number, tap: number): Given => {
  const [a, b] = [tap * ALIKE, (1 - tap) * ALIKE]
  let own = 1
  for (let k = 0; k < taps; k += 1) own *= (a + k) / (a + b + k)
  let [chance, sum, square] = [0, 0, 0]
  for (let count = taps; count < chances.length; count += 1) {
    const weight = own * (chances[count] ?? 0)
    chance += weight
    sum += weight * count
    square += weight * count * count
    own *= ((count + 1) * (count - taps + b)) / ((count + 1 - taps) * (count + a + b))
  }
  return { chance, sum, square }
}

const ALL_SEEN: readonly Given[] = TAPS.map(() => ({ chance: 1, sum: 0, square: 0 }))

/** Guests that each day lost: as many, and as unsure. */
export const lostGuests = (days: readonly Unsold[]): readonly Spread[] => {
  const each = days.map(({ mean, variance, taps }) => {
    if (mean <= 0 && taps <= 0) return ALL_SEEN
    const least = Math.ceil(taps)
    const most = Math.ceil(Math.max(least, mean) + 6 * Math.sqrt(variance) + 6)
    const chances = countChances({ mean, variance }, most)
    return TAPS.map((tap) => given(chances, least, tap))
  })
  const logs = TAPS.map((_, index) =>
    each.reduce((sum, own) => sum + Math.log(Math.max(1e-300, own[index]?.chance ?? 0)), 0),
  )
  const best = Math.max(...logs)
  const weights = logs.map((log) => Math.exp(log - best))
  const whole = weights.reduce((sum, one) => sum + one, 0)
  return days.map(({ taps, variance }, day) => {
    let [mean, square] = [0, 0]
    for (const [index, weight] of weights.entries()) {
      const { chance, sum, square: own } = each[day]?.[index] ?? { chance: 0, sum: 0, square: 0 }
      if (chance <= 0) return { mean: taps, variance: Math.max(taps, variance) }
      mean += ((weight / whole) * sum) / chance
      square += ((weight / whole) * own) / chance
    }
    return { mean, variance: Math.max(0, square - mean * mean) }
  })
}
