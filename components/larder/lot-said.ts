/** What a lot is drawn as, and what is asked of it first. */
import { NOT_THE_OLDEST, type NotTheOldest } from '#lib/larder/event.ts'
import type { LotShown } from '#lib/larder/shelf-view.ts'

type Said = Pick<LotShown, 'bound' | 'barred' | 'relabelled' | 'isFirst' | 'kept'>

/** Nothing of it comes into a service as it is: drawn hatched, as a pan out of its limits is. */
export const isHatched = ({ bound, barred, relabelled }: Said): boolean =>
  bound !== null || barred !== null || relabelled.length > 0

/** It is the one to take: never while something of it is open, nor while it cools. */
export const goesFirst = (lot: Said): boolean =>
  lot.isFirst && lot.kept !== 'cooling' && !isHatched(lot)

/**
 * What is asked of it first, which alone stands open: of which pack it was made, its reading, or where it
 * goes. A lot that is bound for the bin has nothing but that.
 */
export const firstAsked = (lot: Said): 'bin' | 'label' | 'reading' | 'take' => {
  if (lot.bound !== null || lot.barred?.code === 'lot-bound') return 'bin'
  if (lot.relabelled.length > 0) return 'label'
  return lot.kept === 'cooling' || lot.barred?.code === 'lot-unread' ? 'reading' : 'take'
}

/** Of the same food the one that goes before it; null where it goes first itself, or none may be taken. */
export const goesBefore = <L extends Said & Pick<LotShown, 'lot' | 'component'>>(
  lot: Pick<LotShown, 'lot' | 'component'>,
  lots: readonly L[],
): L | null =>
  lots.find((one) => one.component === lot.component && one.isFirst && one.lot !== lot.lot) ?? null

/** It goes first, but isn't taken before somebody in charge has read its label: that is done, not a reason told. */
export const waitsForLabel = (lot: Said | null): boolean =>
  lot !== null && lot.relabelled.length > 0

/** Reasons why one isn't taken that goes first: that it cools only where it does. */
export const reasonsNot = (before: Said | null): readonly NotTheOldest[] =>
  NOT_THE_OLDEST.filter(
    (why) => why !== 'still-cooling' || before === null || before.kept === 'cooling',
  )
