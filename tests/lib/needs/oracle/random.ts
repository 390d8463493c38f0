/** Numbers that look random and are the same on every run and machine. */
export interface Random {
  /** Whole, from 0 and below `end`. */
  readonly below: (end: number) => number
  readonly chance: (share: number) => boolean
  readonly one: <T>(of: readonly T[]) => T
  /** `count` of them in a new order; all where there are fewer. */
  readonly some: <T>(of: readonly T[], count: number) => T[]
}

/** Mulberry32, a public-domain generator of 32 bits. */
export const createRandom = (seed: number): Random => {
  let state = seed >>> 0
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32
  }
  const below = (end: number): number => Math.floor(next() * end)
  const one = <T>(of: readonly T[]): T => {
    const [first] = of
    if (first === undefined) throw new Error('none to choose from')
    return of[below(of.length)] ?? first
  }
  return {
    below,
    one,
    chance: (share) => next() < share,
    some: (of, count) => {
      const left = [...of]
      return Array.from({ length: Math.min(count, left.length) }, () =>
        left.splice(below(left.length), 1),
      ).flat()
    },
  }
}
