import { bare } from '#lib/service/bare.ts'
import type { Circumstances, Decision } from '#lib/service/commands/decision.ts'
import type { ServiceEvent } from '#lib/service/event.ts'
import { happen } from '#lib/service/happen.ts'
import { type Command, decideAlone } from '#lib/service/registry.ts'
import type { ServiceState } from '#lib/service/state.ts'

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
