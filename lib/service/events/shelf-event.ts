/** What happened to the hot or cold shelf of made food. */
import type { WayOut } from '#lib/safety/holding.ts'
import type { Reading } from '#lib/safety/readings.ts'

/** What was read of what stands there longest. */
export interface ShelfRead {
  readonly type: 'shelfRead'
  readonly reading: Reading
  readonly inLimits: boolean
}
/** From then on what stands there counts as at room temperature since the last good reading. */
export interface ShelfReadingMissed {
  readonly type: 'shelfReadingMissed'
  /** Of the last good reading, epoch milliseconds; older logs lack it, and nothing is listed by it. */
  readonly lastGoodAt?: number
}
/** Of what stood there as it was read out of limits: thrown out, or on time alone. */
export interface ShelfResolved {
  readonly type: 'shelfResolved'
  readonly way: Exclude<WayOut['way'], 'reheat'>
}

export type ShelfEvent = ShelfRead | ShelfReadingMissed | ShelfResolved
