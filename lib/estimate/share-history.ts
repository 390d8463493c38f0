/** How often a component is taken, and in how many portions, as past services say it. */
import { logGamma } from '#lib/estimate/count-chances.ts'
import type { TakenShare } from '#lib/estimate/demand.ts'
import { type ServiceCounts, slotsOf, total } from '#lib/estimate/service-counts.ts'

/** Past services under which nothing is learned of how far they stray. */
export const FEWEST = 4

/** Where few services are known, the first guess weighs as many builds. Common practice, no source. */
const FIRST_STRENGTH = 8
const FIRST_MEMORY = 60

/** The option of the highest score; the first of equals. */
export const choose = <T>(options: readonly T[], score: (option: T) => number): T | undefined => {
  let best: T | undefined
  let highest = Number.NEGATIVE_INFINITY
  for (const option of options) {
    const value = score(option)
    if (value > highest) {
      highest = value
      best = option
    }
  }
  return best
}

const logBeta = (a: number, b: number): number => logGamma(a) + logGamma(b) - logGamma(a + b)

interface Thirds {
  readonly builds: readonly number[]
  readonly takings: readonly number[]
}

const thirdsOf = (one: ServiceCounts, component: string): Thirds => {
  const slots = slotsOf(one)
  const cuts = [0, 1, 2].map((part) => [
    Math.round((slots * part) / 3),
    Math.round((slots * (part + 1)) / 3),
  ])
  const of = (list: readonly number[] | undefined) =>
    cuts.map(([from, to]) => Math.max(0, Math.round(total((list ?? []).slice(from, to)))))
  const builds = of(one.builds)
  return {
    builds,
    takings: of(one.takings[component]).map((count, part) => Math.min(count, builds[part] ?? 0)),
  }
}

const WEIGHINGS = [10, 20, 40, 80, 160, 320].flatMap((strength) =>
  [30, 80, 400].map((memory) => ({ strength, memory })),
)

/** How well the thirds of past services would have been forecast, each from the ones before it. */
const weighingScore = (
  past: readonly Thirds[],
  mean: number,
  { strength, memory }: (typeof WEIGHINGS)[number],
): number => {
  let sum = 0
  for (const { builds, takings } of past) {
    let n = 0
    let x = 0
    for (const [part, count] of builds.entries()) {
      const took = takings[part] ?? 0
      const heard = n > 0 ? (n * memory) / (n + memory) : 0
      const a = strength * mean + (n > 0 ? (heard * x) / n : 0)
      const b = strength + heard - a
      sum += logBeta(a + took, b + count - took) - logBeta(a, b)
      n += count
      x += took
    }
  }
  return sum
}

const perTakingOf = (mean: number): readonly number[] => {
  const more = Math.min(1, Math.max(0, mean - 1))
  return more > 0 ? [1 - more, more] : [1]
}

/** How often a component is taken; `first` stands in for, and weighs with, few past services. */
export const shareOf = (
  past: readonly ServiceCounts[],
  component: string,
  first: number,
): TakenShare => {
  const builds = past.reduce((sum, one) => sum + total(one.builds), 0)
  const takings = past.reduce((sum, one) => sum + total(one.takings[component]), 0)
  const portions = past.reduce((sum, one) => sum + total(one.portions[component]), 0)
  const raw = (takings + FIRST_STRENGTH * first) / (builds + FIRST_STRENGTH)
  const mean = Math.min(0.995, Math.max(0.005, raw))
  const perTaking = perTakingOf(takings > 0 ? portions / takings : 1)
  if (past.length < FEWEST)
    return { mean, strength: FIRST_STRENGTH, memory: FIRST_MEMORY, perTaking }
  const thirds = past.map((one) => thirdsOf(one, component))
  const best = choose(WEIGHINGS, (weighing) => weighingScore(thirds, mean, weighing))
  return {
    mean,
    strength: best?.strength ?? FIRST_STRENGTH,
    memory: best?.memory ?? FIRST_MEMORY,
    perTaking,
  }
}
