/** Where builds were begun, as the oracle itself says from which pans they come. */
import type { Recorded } from '#lib/service/events/event.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName, findBuild } from '#lib/service/tickets.ts'
import type { Ledger } from '#tests/lib/spine/oracle/ledger.ts'
import { takenComponents, takenFromNow } from '#tests/lib/spine/oracle/standing.ts'

/** A command starts at most one: what stood in the kitchen as it did stands there still. */
export const noteBegun = (
  ledger: Ledger,
  events: readonly Recorded[],
  after: RunningState,
): void => {
  for (const event of events) {
    if (event.type !== 'buildStarted') continue
    const build = findBuild(after, event.ticket, event.letter)
    if (!build) continue
    const behind = takenComponents(build.choice).filter(
      (one) => takenFromNow(after, ledger, build.choice, one) === 'backup',
    )
    const { position } = event
    ledger.begun.set(buildName(event.ticket, event.letter), { position, behind: new Set(behind) })
  }
}
