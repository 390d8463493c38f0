import { afterAll, withHolds } from '#lib/service/commands/with-holds.ts'
import type { ServiceEvent } from '#lib/service/event.ts'
import { foodDue } from '#lib/service/food-due.ts'
import { withHandedOver } from '#lib/service/found-handed-over.ts'
import { isRunning, type RunningState, type ServiceState } from '#lib/service/state.ts'
import { stopsFor } from '#lib/service/thrown-out.ts'

export interface Due {
  /** Epoch milliseconds at which it fell due. */
  readonly due: number
  readonly event: ServiceEvent
}

const whenRunning = (state: ServiceState): RunningState | null =>
  isRunning(state) && state.stage === 'open' && state.clockJump === null ? state : null

const next = (state: RunningState): Due | null => {
  const food = foodDue(state)[0]
  const closes = state.closesItselfAt
  if (closes !== null && (!food || closes < food.at))
    return { due: closes, event: { type: 'serviceClosed', why: 'demo-left-open' } }
  return food ? { due: food.at, event: food.event } : null
}

/** When the next thing falls due, epoch milliseconds; null where nothing will. */
export const nextDue = (state: ServiceState): number | null => {
  const running = whenRunning(state)
  return running ? (next(running)?.due ?? null) : null
}

/** What an event that fell due brings with it: what is being made of such food stops. */
const withWhatFollows = (
  state: RunningState,
  event: ServiceEvent,
  now: number,
): readonly ServiceEvent[] => {
  const isPan = event.type === 'throwOutPassed' && (event.what === 'pan' || event.what === 'backup')
  return withHolds(state, [event, ...(isPan ? stopsFor(state, [event.id]) : [])], { now })
}

/** What has fallen due by now. Nothing does while a jump of the clock isn't confirmed. */
export const due = (state: ServiceState, now: number): readonly Due[] => {
  const fallen: Due[] = []
  let running = whenRunning(state)
  while (running) {
    const one = next(running)
    if (!one || one.due > now) break
    const follows = withWhatFollows(running, one.event, now)
    const events = withHandedOver(running, follows, { now, due: one.due })
    fallen.push(...events.map((event) => ({ due: one.due, event })))
    if (one.event.type === 'serviceClosed') break
    running = afterAll(running, events, now)
  }
  return fallen
}
