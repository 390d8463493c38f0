/** What taps on a pan go through. */

import { isKept, type SettledPart, type Wish } from '#lib/rooms/orders/facts/draft.ts'
import type { Offer } from '#lib/rooms/orders/facts/offer.ts'
import type { Placement } from '#lib/service/events/build-choice.ts'
import { componentOf } from '#lib/station/find.ts'
import type { Item, Part } from '#lib/station/station-document.ts'

/**
 * The order in which taps on a pan go: from the usual placement to no, so that a no is one tap,
 * then to the other one; the side only where cups exist, no only where it can be left out.
 */
export const tapCycle = (item: Item, part: Part, cups: boolean): readonly Placement[] => {
  const cycle: Placement[] =
    part.usual === 'no'
      ? ['no', 'in', 'side']
      : [part.usual, 'no', part.usual === 'in' ? 'side' : 'in']
  return cycle.filter((one) => (one !== 'side' || cups) && (one !== 'no' || !isKept(item, part)))
}

/** The wish after a tap on a part's pan. */
export const tapped = (offer: Offer, item: Item, settled: SettledPart): Wish => {
  const { part, leftFor } = settled
  if (leftFor !== null) return { placement: part.usual === 'no' ? 'in' : part.usual, portions: 1 }
  const cycle = tapCycle(item, part, componentOf(offer.state.station, part.component).side)
  const next = cycle[(cycle.indexOf(settled.placement) + 1) % cycle.length] ?? settled.placement
  return { placement: next, portions: next === 'no' ? 0 : 1 }
}
