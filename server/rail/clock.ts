/** The server's clock, and whether it jumped: set by hand, or the machine slept. */
export interface ServerClock {
  /** Epoch milliseconds. */
  now(): number
  /** Milliseconds that only ever go on, from any beginning. */
  monotonic(): number
  /**
   * Watches from now on, for one service: each call tells how far the wall clock has run away from
   * the monotonic one since the last, in milliseconds; 0 for no jump.
   */
  watchJumps(): () => number
}

/** Drift below this is what clocks do. */
export const JUMP_MS = 60_000

export const createServerClock = (
  wall: () => number = Date.now,
  monotonic: () => number = () => performance.now(),
): ServerClock => ({
  now: wall,
  monotonic,
  watchJumps: () => {
    let offset = wall() - monotonic()
    return () => {
      const before = offset
      offset = wall() - monotonic()
      const by = Math.round(offset - before)
      return Math.abs(by) >= JUMP_MS ? by : 0
    }
  },
})
