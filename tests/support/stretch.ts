/** How much of their length random tests run: all of it, or a part in each of the mutants’ runs. */

/** Set to `short` by whoever runs the tests once for each of many mutants. */
export const STRETCH = 'LEVEL_SCOOP_STRETCH'

/** A mutant that is noticed by the rare history alone wants a small test of its own anyway. */
const SHORT = 1 / 12

export const isShort = process.env[STRETCH] === 'short'

/** Of so many runs as many as are asked for; at least one. What is counted in them counts when they are whole. */
export const stretched = (whole: number): number =>
  isShort ? Math.max(1, Math.floor(whole * SHORT)) : whole
