/** Seeded chance for the simulation: every draw comes from the seed and the name of its stream. */
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'

export interface Chance {
  /** 0 to 1, never 0. */
  readonly uniform: () => number
  readonly normal: (mean: number, sd: number) => number
  /** Around 1 in the middle, with a relative spread. */
  readonly factor: (sd: number) => number
  readonly gamma: (shape: number) => number
  readonly poisson: (mean: number) => number
  readonly happens: (chance: number) => boolean
  /** The place of one of several weights, drawn by their size. */
  readonly oneOf: (weights: readonly number[]) => number
}

const hashOf = (text: string): number => {
  let hash = 0x811c9dc5
  for (let i = 0; i < text.length; i += 1) {
    hash ^= text.charCodeAt(i)
    hash = Math.imul(hash, 0x01000193)
  }
  return hash | 0
}

/** A stream of its own for each name, so that one draw more in one place changes no other. */
export const chanceOf = (seed: number, name: string): Chance => {
  const source = xoroshiro128plus(hashOf(`${seed}/${name}`))
  const uniform = (): number => Math.max(Number.MIN_VALUE, uniformFloat64(source))
  const normal = (mean: number, sd: number): number =>
    mean + sd * Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform())
  // Marsaglia and Tsang, "A simple method for generating gamma variables", 2000 (from memory).
  const gamma = (shape: number): number => {
    if (shape < 1) return gamma(shape + 1) * uniform() ** (1 / shape)
    const d = shape - 1 / 3
    for (;;) {
      const x = normal(0, 1)
      const v = (1 + x / Math.sqrt(9 * d)) ** 3
      if (v > 0 && Math.log(uniform()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v
    }
  }
  const poisson = (mean: number): number => {
    if (mean > 30) return poisson(mean / 2) + poisson(mean / 2)
    const limit = Math.exp(-mean)
    let product = uniform()
    let count = 0
    while (product > limit) {
      count += 1
      product *= uniform()
    }
    return count
  }
  return {
    uniform,
    normal,
    factor: (sd) => Math.exp(normal(0, sd)),
    gamma,
    poisson,
    happens: (chance) => uniform() < chance,
    oneOf: (weights) => {
      let rest = uniform() * weights.reduce((sum, weight) => sum + weight, 0)
      for (const [index, weight] of weights.entries()) {
        rest -= weight
        if (rest <= 0) return index
      }
      return weights.length - 1
    },
  }
}
