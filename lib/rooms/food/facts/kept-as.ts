/** How food was kept until now: what it may be said to have left when time alone begins. */

import { heldByAt } from '#lib/rooms/food/facts/place-now.ts'
import type { ClockStart } from '#lib/safety/time-control.ts'
import type { Place } from '#lib/service/events/food-event.ts'
import { placeOf } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'

export interface Kept {
  readonly heldBy: 'hot' | 'cold' | null
  /** What it may be said to have left. */
  readonly mayLeave: readonly ClockStart['from'][]
  /** At room temperature it stands since then at the latest, epoch milliseconds. */
  readonly roomSince?: number
}

const KEPT = {
  hot: { heldBy: 'hot', mayLeave: ['hot'] },
  cold: { heldBy: 'cold', mayLeave: ['cold'] },
  /** Cut or opened, and never put into the cold as far as anybody said. */
  fresh: { heldBy: 'cold', mayLeave: ['cold', 'room'] },
  dry: { heldBy: null, mayLeave: ['room'] },
  neither: { heldBy: null, mayLeave: [] },
} as const satisfies Readonly<Record<string, Kept>>

/** How it was held until now, and so what it can have left. */
export const keptAs = (state: RunningState, place: Place, now: number): Kept => {
  const placed = placeOf(state, place)
  const held = heldByAt(state, place, now)
  if (!placed || held === null || held === 'time') return KEPT.neither
  const isUnread = placed.newest === null && placed.stage !== 'standing'
  return held === 'cold' && isUnread ? { ...KEPT.fresh, roomSince: placed.since } : KEPT[held]
}
