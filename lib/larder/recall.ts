/** What the log says of deliveries: all that came with a lot, and which labels they made unread. */
import type { Delivery } from '#lib/larder/delivery.ts'
import type { LarderRecorded } from '#lib/larder/event.ts'

/** A lot as it is compared: signs, spaces and the size of letters are read and typed as they come. */
const comparable = (lot: string): string => {
  const bare = lot.toUpperCase().replace(/[^\p{L}\p{N}]/gu, '')
  return bare === '' ? lot.trim() : bare
}

/** Everything that came with a lot, of whatever food, the newest first; nothing of an empty one. */
export const deliveriesWithLot = (
  entries: readonly LarderRecorded[],
  lot: string,
): readonly Delivery[] => {
  const asked = comparable(lot)
  if (asked === '') return []
  return entries
    .flatMap((entry): readonly Delivery[] => {
      if (entry.type !== 'deliveryReceived' && entry.type !== 'deliverySentBack') return []
      if (entry.food.lot === null || comparable(entry.food.lot) !== asked) return []
      const sentBack = entry.type === 'deliverySentBack' ? entry.why : null
      return [{ ...entry.food, at: entry.at, sentBack }]
    })
    .reverse()
}

/** Another product came, so that its label is unread from that version of the house's labels on. */
export interface UnreadFrom {
  readonly ingredient: string
  readonly version: number
  /** Epoch milliseconds. */
  readonly at: number
}

/** What deliveries made unread. */
export const unreadFrom = (entries: readonly LarderRecorded[]): readonly UnreadFrom[] =>
  entries.flatMap((entry) =>
    entry.type === 'deliveryReceived' && entry.labelVersion !== undefined
      ? [{ ingredient: entry.food.ingredient, version: entry.labelVersion, at: entry.at }]
      : [],
  )
