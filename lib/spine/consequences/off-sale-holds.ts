/**
 * Holds for food that was read out of limits: until the person in charge decides on the pan, though
 * another one could fill what is held.
 */

import { isFree, isHeldFor, madeWith, makingWith } from '#lib/rooms/making/facts/made-with-food.ts'
import type { Consequence, Happened } from '#lib/service/consequence.ts'
import type { BuildHeld } from '#lib/service/events/event.ts'
import { boundAt, type Suspect } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName, findBuild, type QueuedBuild } from '#lib/service/tickets.ts'
import { readBad } from '#lib/spine/consequences/places.ts'

const READS = ['pans', 'backupPans'] as const

const holdsFor = (
  { before, after, ...happened }: Happened,
  buildsWith: (state: RunningState, suspect: Suspect) => readonly QueuedBuild[],
): readonly BuildHeld[] => {
  // One at a time for a build: the next round sees it held for the first.
  const held = new Set<string>()
  // By then it may not be sold, so that nothing seems to take from it any more.
  return readBad({ before, after, ...happened }).flatMap((suspect) =>
    buildsWith(before, suspect).flatMap(({ ticket: { number }, build: { letter, state } }) => {
      const name = buildName(number, letter)
      const build = findBuild(after, number, letter)
      const isOver =
        build?.state !== state ||
        !isFree(build) ||
        isHeldFor(build, suspect.id) ||
        boundAt(after, 'build', name) !== undefined
      if (held.has(name) || isOver) return []
      held.add(name)
      return [
        {
          type: 'buildHeld',
          ticket: number,
          letter,
          reason: 'off-sale',
          pan: suspect.id,
        } as const,
      ]
    }),
  )
}

/** What is being made and could have taken from it. */
export const offSaleMaking: Consequence = {
  name: 'off-sale-making',
  reads: READS,
  follow: (happened) => holdsFor(happened, makingWith),
}

/** What stands made on the shelf and did, since it was last known to be good. */
export const offSaleMade: Consequence = {
  name: 'off-sale-made',
  reads: READS,
  follow: (happened) => holdsFor(happened, madeWith),
}
