import { standingOf } from '#lib/rooms/making/facts/build-standing.ts'
import type { Consequence } from '#lib/service/consequence.ts'
import type { HoldLifted } from '#lib/service/events/event.ts'
import { isStale } from '#lib/service/known.ts'
import type { Build } from '#lib/service/state.ts'
import { buildName, openBuilds } from '#lib/service/tickets.ts'
import { VERDICT_SLICES } from '#lib/spine/consequences/need-holds.ts'

/** Held for what stood on the line, before food was made; what a guest told, they answer themselves. */
const isOfTheLine = ({ state, hold, stop, choice, told, had = [] }: Build): boolean =>
  state === 'waiting' &&
  // Its guest had food of it before, of which the hold may speak.
  had.length === 0 &&
  (hold?.reason === 'label' || hold?.reason === 'contact') &&
  hold.told === null &&
  !hold.dropsChange &&
  !told &&
  choice.asked !== 'not-sure' &&
  stop?.to == null &&
  stop?.reason !== 'cancel'

/** A hold whose cause is over before food was made. */
export const liftedHolds: Consequence = {
  name: 'lifted-holds',
  reads: VERDICT_SLICES,
  follow: ({ after, known }) =>
    isStale(after, known)
      ? []
      : openBuilds(after).flatMap(({ ticket, build }): HoldLifted[] => {
          const { letter } = build
          const name = buildName(ticket.number, letter)
          return isOfTheLine(build) && standingOf(after, build, name, known.checker)?.length === 0
            ? [{ type: 'holdLifted', ticket: ticket.number, letter }]
            : []
        }),
}
