import { type Wait, waitFor } from '#lib/estimate/wait.ts'
import type { ServiceState } from '#lib/service/state.ts'
import { openBuilds } from '#lib/service/tickets.ts'

/** How long an order of so many builds takes that is sent now; null without an assembler. */
export const waitNow = (state: ServiceState, own: number): Wait | null => {
  let before = 0
  let making = 0
  for (const { build } of openBuilds(state)) {
    if (build.state === 'waiting') before += 1
    if (build.state === 'making') making += 1
  }
  return waitFor(state.buildTimes, { before, making, own }, state.assemblers)
}
