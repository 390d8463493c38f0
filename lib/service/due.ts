import type { ServiceEvent } from '#lib/service/event.ts'
import type { ServiceState } from '#lib/service/state.ts'

export interface Due {
  /** Epoch milliseconds at which it fell due. */
  readonly due: number
  readonly event: ServiceEvent
}

/** When the next thing falls due, epoch milliseconds; null where nothing will. */
export const nextDue = (state: ServiceState): number | null =>
  state.stage === 'open' && state.clockJump === null ? state.closesItselfAt : null

/** What has fallen due by now. Nothing does while a jump of the clock isn't confirmed. */
export const due = (state: ServiceState, now: number): readonly Due[] => {
  const at = nextDue(state)
  return at !== null && at <= now
    ? [{ due: at, event: { type: 'serviceClosed', why: 'demo-left-open' } }]
    : []
}
