/** What a lot is drawn as, and what is asked of it first. */
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
