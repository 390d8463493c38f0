/** Builds that wait to be made again. */
import type { RunningState } from '#lib/service/state.ts'
import { buildName, openBuilds } from '#lib/service/tickets.ts'

/**
 * Remakes that wait, each under a name of its own: a knock for those that came anew, such as one
 * that was handed over.
 */
export const waitingRemakes = (state: RunningState): readonly string[] =>
  openBuilds(state)
    .filter(({ build }) => build.state === 'waiting' && build.hold === null && build.remakes > 0)
    .map(({ ticket, build }) => `${buildName(ticket.number, build.letter)}/${build.remakes}`)
