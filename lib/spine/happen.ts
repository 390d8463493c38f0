/** What happens, and all that follows from it: each event is folded once. */

import type { HappensWith } from '#lib/service/consequence.ts'
import type { Recorded, ServiceEvent, Stamp } from '#lib/service/events/event.ts'
import { isRunning, isUnderWay, type ServiceState } from '#lib/service/state.ts'
import { CONSEQUENCES, consequences } from '#lib/spine/consequences/consequences.ts'
import { evolve } from '#lib/spine/evolve.ts'

export interface Led {
  readonly state: ServiceState
  readonly recorded: readonly Recorded[]
}

/** Each round says what follows from the ones before; a chain of more would be a rule that says itself again. */
const MOST_ROUNDS = 64

/**
 * The state after events that happen at once, and everything that was recorded on the way.
 * @param from where the log stands before: the first event lies one further
 * @param command id of the command that caused it; null for what fell due or the server noted
 * @param adult whose passphrase proved the command, where one did
 * @throws where an event can't have happened in its state, or consequences don't end
 */
export const happen = (
  before: ServiceState,
  events: readonly ServiceEvent[],
  { position, command, adult }: Pick<Stamp, 'position' | 'command' | 'adult'>,
  { follows = CONSEQUENCES, ...known }: HappensWith,
): Led => {
  const { now, due } = known
  const recorded: Recorded[] = []
  const said: ServiceEvent[] = []
  let state = before
  let next = events
  for (let round = 0; next.length > 0; round += 1) {
    if (round > MOST_ROUNDS) throw new Error(`no end of ${next[0]?.type}`)
    for (const event of next) {
      const stamped: Recorded = {
        ...event,
        position: position + recorded.length + 1,
        at: now,
        command,
        ...(due === undefined ? {} : { due }),
        ...(adult === undefined ? {} : { adult }),
      }
      state = evolve(state, stamped)
      recorded.push(stamped)
      said.push(event)
    }
    if (!isRunning(before) || !isUnderWay(state)) break
    next = consequences({ before, after: state, events: said, known }, follows)
  }
  return { state, recorded }
}
