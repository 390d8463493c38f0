/** How a copy of a service catches up by position, whichever way the news comes. */
import type { Followed } from '#lib/protocol/wire.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import { NOT_OPENED, type ServiceState } from '#lib/service/state.ts'
import { evolveOpen } from '#lib/spine/evolve-open.ts'

export interface Copy {
  readonly state: ServiceState
  readonly position: number
}

export interface CaughtUp extends Copy {
  /** Whether nothing was missing; if not, the copy has to follow again. */
  readonly isWhole: boolean
}

/** Folds what is newer, in order, up to the first gap. */
export const foldNewer = (copy: Copy, events: readonly Recorded[]): CaughtUp => {
  let { state, position } = copy
  try {
    for (const event of events) {
      if (event.position <= position) continue
      if (event.position !== position + 1) return { state, position, isWhole: false }
      state = evolveOpen(state, event)
      position = event.position
    }
  } catch {
    // What this copy holds can't be what the server holds: it begins anew.
    return { state: NOT_OPENED, position: 0, isWhole: false }
  }
  return { state, position, isWhole: true }
}

/** Takes the reply to what was asked from a position. */
export const takeReply = (copy: Copy, followed: Followed, from: number): CaughtUp => {
  if (followed.kind === 'events') return foldNewer(copy, followed.events)
  if (followed.kind !== 'snapshot') return { ...copy, isWhole: true }
  const { state, position } = followed
  // A server that is behind what was asked for is the truth; a reply that was overtaken isn't.
  const isTruth = position >= copy.position || position < from
  return isTruth ? { state, position, isWhole: true } : { ...copy, isWhole: true }
}
