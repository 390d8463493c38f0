/**
 * Numbers that are spread as chance would, the same each time: days are drawn from them, so that the
 * same question has the same answer on every machine.
 */

export interface Draws {
  /** Between 0 and 1, neither of them. */
  readonly uniform: () => number
  readonly normal: () => number
  /** Of a shape of 0.05 or more; its mean is the shape. */
  readonly gamma: (shape: number) => number
}

const TWO_32 = 2 ** 32

/** Mulberry32, a mixing of a counter (T. Ettinger, public domain; from memory). */
export const drawsFrom = (seed: number): Draws => {
  let state = seed | 0
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) | 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return (((mixed ^ (mixed >>> 14)) >>> 0) + 0.5) / TWO_32
  }
  // Box and Muller, "A note on the generation of random normal deviates", 1958 (from memory).
  const normal = (): number =>
    Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform())
  // Marsaglia and Tsang, "A simple method for generating gamma variables", 2000 (from memory).
  const gamma = (shape: number): number => {
    if (shape < 1) return gamma(shape + 1) * uniform() ** (1 / shape)
    const d = shape - 1 / 3
    for (;;) {
      const x = normal()
      const v = (1 + x / Math.sqrt(9 * d)) ** 3
      if (v > 0 && Math.log(uniform()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v
    }
  }
  return { uniform, normal, gamma }
}

/** Place `index` of a row whose every beginning is spread evenly over 0 to 1 (van der Corput). */
export const evenly = (index: number): number => {
  let [value, part] = [0, 0.5]
  for (let rest = index + 1; rest > 0; rest >>= 1) {
    if (rest & 1) value += part
    part /= 2
  }
  return value
}
