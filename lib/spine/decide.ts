import type { Circumstances, Decision } from '#lib/service/commands/decision.ts'
import { bare } from '#lib/service/events/bare.ts'
import type { ServiceEvent } from '#lib/service/events/event.ts'
import type { ServiceState } from '#lib/service/state.ts'
import { happen } from '#lib/spine/happen.ts'
import { type Command, decideAlone } from '#lib/spine/registry.ts'

/**
 * What a command does to a service in this state, with all that follows from it: events, or a refusal.
 * Changes nothing itself. Whoever folds them too asks `take`, which does both once.
 */
export const decide = (
  state: ServiceState,
  command: Command,
  circumstances: Circumstances,
): Decision => {
  const decision = decideAlone(state, command, circumstances)
  const led = (events: readonly ServiceEvent[]) =>
    happen(state, events, { position: state.position, command: null }, circumstances).recorded.map(
      bare,
    )
  if ('events' in decision) return { events: led(decision.events) }
  const { refusal, also } = decision
  return also ? { refusal, also: led(also) } : decision
}
