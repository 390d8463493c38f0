/** The shelf on which made food waits, where it is hot or cold: what is known of it at a moment. */
import type { RunningState } from '#lib/service/state.ts'
import { openBuilds, type QueuedBuild } from '#lib/service/tickets.ts'

/** In the place of a pan, of builds that are held for the shelf: no pan can be called so. */
export const SHELF = '@shelf'

/** How it is held by the document; null where it is at room temperature, so that nobody reads it. */
export const shelfHeldBy = ({ station }: RunningState): 'hot' | 'cold' | null => {
  const { held } = station.safety.shelf
  return held === 'none' ? null : held
}

/**
 * As what it counts for food that is finished now: hot or cold only while a reading in limits says so.
 * One that nobody reads is at room temperature, whatever the document calls it.
 */
export const shelfNow = (state: RunningState): 'hot' | 'cold' | 'none' =>
  state.clockJump === null && state.shelf?.goodAt != null ? state.station.safety.shelf.held : 'none'

/** What stands on it. */
export const onShelf = (state: RunningState): readonly QueuedBuild[] =>
  openBuilds(state).filter(({ build }) => build.state === 'made')
