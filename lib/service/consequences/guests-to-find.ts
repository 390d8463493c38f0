/** Guests who have food that is found not to fit them. */

import { isCovered } from '#lib/needs/judge.ts'
import { standingOf } from '#lib/service/build-standing.ts'
import type { Consequence, Happened } from '#lib/service/consequences/consequence.ts'
import { holdReason } from '#lib/service/consequences/need-holds.ts'
import type { BuildHeld } from '#lib/service/event.ts'
import { everyTicket } from '#lib/service/every-ticket.ts'
import type { HeldStock } from '#lib/service/food-state.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName } from '#lib/service/tickets.ts'

const isSoiledElse = (
  then: Readonly<Record<string, HeldStock>>,
  now: Readonly<Record<string, HeldStock>>,
): boolean =>
  then !== now &&
  Object.entries(now).some(
    ([id, { soiledBy }]) => soiledBy.join() !== (then[id]?.soiledBy.join() ?? ''),
  )

/** Food that was handed over is the same whatever is done on the line, but for what is told of it. */
const isNews = ({ before, after }: Happened): boolean =>
  before.station !== after.station ||
  isSoiledElse(before.pans, after.pans) ||
  isSoiledElse(before.backupPans, after.backupPans)

/**
 * Builds of the whole service that were handed over and in whose way something stands that didn't
 * before. What was answered isn't asked again.
 */
export const guestsToFind: Consequence = {
  name: 'guests-to-find',
  reads: ['station', 'pans', 'backupPans'],
  follow: (happened) => {
    if (!isNews(happened)) return []
    const { before, after, known } = happened
    return everyTicket(after).flatMap(({ number, builds }) =>
      builds.flatMap((build): BuildHeld[] => {
        const { state, letter, hold, stop, choice } = build
        if (state !== 'handed-over' || hold || stop || choice.needs.length === 0) return []
        const name = buildName(number, letter)
        const standing = (at: RunningState) => standingOf(at, build, name, known.checker)
        const now = standing(after)
        if (now?.length === 0) return []
        const then = standing(before)
        // What is declared worse since is told anew.
        const isNew = !now || !then || now.some((one) => !then.some((was) => isCovered(one, was)))
        return isNew
          ? [
              {
                type: 'buildHeld',
                ticket: number,
                letter,
                reason: holdReason(happened, build, now),
              },
            ]
          : []
      }),
    )
  },
}
