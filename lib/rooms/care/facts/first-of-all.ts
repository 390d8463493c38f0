/** What can hurt a guest now: builds that are held, guests to find, labels that nobody has read. */

import { isBefore } from '#lib/rooms/care/facts/product-before.ts'
import type { HoldReason } from '#lib/service/events/event.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName, openBuilds } from '#lib/service/tickets.ts'
import type { Ingredient, StationDocument } from '#lib/station/station-document.ts'

export interface HeldBuild {
  readonly name: string
  readonly reason: HoldReason
  readonly at: number
}

/** Open builds that may not go on as they are, in the order in which they are made. */
export const heldBuilds = (state: RunningState): readonly HeldBuild[] =>
  openBuilds(state).flatMap(({ ticket, build: { letter, hold } }) =>
    hold ? [{ name: buildName(ticket.number, letter), reason: hold.reason, at: hold.at }] : [],
  )

/** Handed-over builds whose guests are to be found, those that were told first at the head. */
export const guestsToFind = (state: RunningState): readonly HeldBuild[] =>
  Object.values(state.toFind)
    .map(({ ticket, letter, reason, at }) => ({ name: buildName(ticket, letter), reason, at }))
    .sort((one, other) => one.at - other.at)

/** Ingredients of a component or a recipe whose labels nobody has read. */
export const unreadLabels = ({
  ingredients,
  components,
  recipes,
}: StationDocument): readonly Ingredient[] => {
  const used = new Set([...components, ...recipes].flatMap((one) => one.ingredients))
  return ingredients.filter((one) => one.readOn === null && used.has(one.id) && !isBefore(one.id))
}
