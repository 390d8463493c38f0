/** What happened, and the builds that no longer fit their guests since. */
import type { Checker } from '#lib/needs/judge.ts'
import { unmadeHolds } from '#lib/service/commands/recheck.ts'
import type { ServiceEvent } from '#lib/service/event.ts'
import { evolve } from '#lib/service/evolve.ts'
import { isRunning, type RunningState } from '#lib/service/state.ts'

/** The state after events that all happen now. */
export const afterAll = (
  state: RunningState,
  events: readonly ServiceEvent[],
  now: number,
): RunningState => {
  let after = state
  for (const event of events) {
    const next = evolve(after, { ...event, position: 0, at: now, command: null })
    if (!isRunning(next)) throw new Error('a service lost its station')
    after = next
  }
  return after
}

/** Events, and a hold of each build not made yet that counted on a back-up pan which isn't ready now. */
export const withHolds = (
  before: RunningState,
  events: readonly ServiceEvent[],
  { now, checker }: { readonly now: number; readonly checker?: Checker | undefined },
): readonly ServiceEvent[] => {
  const after = afterAll(before, events, now)
  const isKept =
    Object.keys(before.backups).every((id) => after.backups[id] !== undefined) &&
    events.every((event) => !('from' in event && typeof event.from === 'string'))
  return isKept
    ? events
    : [...events, ...unmadeHolds({ before, after, reason: 'contact', checker })]
}
