import { foodDue } from '#lib/rooms/food/facts/food-due.ts'
import type { HappensWith } from '#lib/service/consequence.ts'
import type { Recorded, ServiceEvent } from '#lib/service/events/event.ts'
import { isUnderWay, type RunningState, type ServiceState } from '#lib/service/state.ts'
import { happen, type Led } from '#lib/spine/happen.ts'

export interface Due {
  /** Epoch milliseconds at which it fell due. */
  readonly due: number
  readonly event: ServiceEvent
}

const whenRunning = (state: ServiceState): RunningState | null =>
  isUnderWay(state) && state.clockJump === null ? state : null

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

/** What is known beside the state; the newest labels aren't known where it is left away. */
export type DueWith = Partial<Omit<HappensWith, 'now' | 'due'>>

/**
 * What has fallen due by now, with all that follows from it, and the state after it. Nothing does while
 * a jump of the clock isn't confirmed.
 * @param position where the log stands
 */
export const fallDue = (
  before: ServiceState,
  now: number,
  position = 0,
  { newestLabels = null, ...known }: DueWith = {},
): Led => {
  const recorded: Recorded[] = []
  let state = before
  for (let running = whenRunning(state); running; running = whenRunning(state)) {
    const one = next(running)
    if (!one || one.due > now) break
    const at = { position: position + recorded.length, command: null }
    const led = happen(running, [one.event], at, { ...known, newestLabels, now, due: one.due })
    recorded.push(...led.recorded)
    state = led.state
  }
  return { state, recorded }
}
