/** Builds that hold, or could hold, food of one place. */

import { tookFrom } from '#lib/rooms/food/facts/taken-from.ts'
import { wantedFrom } from '#lib/rooms/pans/facts/behind.ts'
import { isHeldForPan } from '#lib/service/folding/pan-hold.ts'
import { componentIn, type Suspect } from '#lib/service/held-stock.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
import { openBuilds, type QueuedBuild } from '#lib/service/tickets.ts'

/** Whether nothing else has stopped it: what else did has its food thrown out anyway. */
export const isFree = (build: Build): boolean =>
  (build.stop === null && build.hold === null) || isHeldForPan(build)

/** What is in the making could have taken from any pan of its component, on the line or behind it. */
const couldTake = (state: RunningState, build: Build, { what, id }: Suspect): boolean => {
  const component = componentIn(state.station, id)
  if (component === undefined || (build.takes[component] ?? 0) <= 0) return false
  const { line, behind } = wantedFrom(state, build.choice, build.takes)
  const isBegunSo = build.behind?.includes(component) === (what === 'backup')
  return isBegunSo || ((what === 'pan' ? line : behind)[component] ?? 0) > 0
}

export const isHeldFor = ({ hold }: Build, id: string): boolean => hold?.pans?.includes(id) ?? false

/** What is being made and could have taken from it. */
export const makingWith = (state: RunningState, suspect: Suspect): readonly QueuedBuild[] =>
  openBuilds(state).filter(
    ({ build }) => build.state === 'making' && isFree(build) && couldTake(state, build, suspect),
  )

/**
 * Made builds on the shelf with food that was taken since it was last known to be good: of the very
 * moment nobody knows which came first, since time stands still where a clock was set back.
 */
export const madeWith = (state: RunningState, suspect: Suspect): readonly QueuedBuild[] =>
  openBuilds(state).filter(
    ({ build }) =>
      build.state === 'made' &&
      isFree(build) &&
      (isHeldFor(build, suspect.id) ||
        (build.since >= (suspect.lastGoodAt ?? Number.NEGATIVE_INFINITY) &&
          tookFrom(state, build, suspect.what, suspect.id))),
  )
