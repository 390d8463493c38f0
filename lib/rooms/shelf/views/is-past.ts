import { boundAt } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName, type QueuedBuild } from '#lib/service/tickets.ts'

/** Whether a made build's time is over: from its throw-out time on, or where it was told so. */
export const isPast = (
  state: RunningState,
  { ticket, build }: QueuedBuild,
  now: number,
): boolean => {
  const at = build.until?.throwOutAt ?? null
  const name = buildName(ticket.number, build.letter)
  return (at !== null && now >= at) || boundAt(state, 'build', name) !== undefined
}
