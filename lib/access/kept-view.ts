/** How long what is kept is kept, as it is drawn. */
import type { Until } from '#lib/access/kept.ts'

/** Where a bar ends, as a share of the way from an order's sending to what stays; beyond 1 it goes on. */
const END: Readonly<Record<Until, number>> = {
  acknowledged: 0.08,
  stop: 0.2,
  close: 1 / 3,
  tasted: 1 / 3,
  forgotten: 0.5,
  retention: 2 / 3,
  replaced: 1,
  removed: 0.5,
  always: 1,
}

export const barEnd = (until: Until): number => END[until]

/** Whether a row goes on for as long as the house does. */
export const stays = (until: Until): boolean => END[until] === 1
