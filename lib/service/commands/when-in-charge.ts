import {
  type Circumstances,
  type Decision,
  refuse,
  whenOpen,
} from '#lib/service/commands/decision.ts'
import type { RunningState, ServiceState } from '#lib/service/state.ts'

/** Decides what only the person in charge may do, who has proved to be it by passphrase. */
export const whenInCharge = (
  state: ServiceState,
  { by }: Circumstances,
  decide: (state: RunningState) => Decision,
): Decision =>
  whenOpen(state, (running) =>
    by === 'in-charge' ? decide(running) : refuse({ code: 'not-in-charge' }),
  )
