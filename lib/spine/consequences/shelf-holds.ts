/** What stands on the hot or cold shelf, once that is read out of limits and when it is decided on. */
import { buildPassed } from '#lib/rooms/food/facts/build-passed.ts'
import { isFree, isHeldFor } from '#lib/rooms/making/facts/made-with-food.ts'
import type { Consequence } from '#lib/service/consequence.ts'
import type { BuildHeld } from '#lib/service/events/event.ts'
import type { ThrowOutPassed } from '#lib/service/events/food-event.ts'
import { boundAt } from '#lib/service/held-stock.ts'
import { onShelf, SHELF } from '#lib/service/shelf.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName } from '#lib/service/tickets.ts'

/** Holds of all that stands there as it is found: whenever it was made, nobody knows how warm it was. */
export const shelfHolds = (before: RunningState, after: RunningState): readonly BuildHeld[] => {
  if (!after.shelf?.offSale || before.shelf?.offSale) return []
  return onShelf(after).flatMap(({ ticket: { number }, build }): BuildHeld[] => {
    const { letter } = build
    const isOver = boundAt(after, 'build', buildName(number, letter)) !== undefined
    return isOver || !isFree(build) || isHeldFor(build, SHELF)
      ? []
      : [{ type: 'buildHeld', ticket: number, letter, reason: 'off-sale', pan: SHELF }]
  })
}

export const shelfMade: Consequence = {
  name: 'shelf-made',
  reads: ['shelf'],
  follow: ({ before, after }) => shelfHolds(before, after),
}

/** What stood there as it was found is thrown out with it, also what is held for something else. */
export const shelfGone: Consequence = {
  name: 'shelf-gone',
  reads: ['shelf'],
  follow: ({ before, after, events }) => {
    const offSale = before.shelf?.offSale
    if (!offSale || !events.some((one) => one.type === 'shelfResolved' && one.way === 'discard'))
      return []
    return onShelf(after).flatMap(({ ticket, build }): ThrowOutPassed[] => {
      const id = buildName(ticket.number, build.letter)
      return build.since > offSale.since || boundAt(after, 'build', id)
        ? []
        : [buildPassed(build, id, 'out-of-limits')]
    })
  },
}
