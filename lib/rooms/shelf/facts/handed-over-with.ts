/** Builds that were handed over with food which wasn't known to be good then. */

import { tookFrom } from '#lib/rooms/food/facts/taken-from.ts'
import type { HandedOverBuild } from '#lib/service/events/handed-over-event.ts'
import { handedOverBuilds } from '#lib/service/every-ticket.ts'
import { componentIn, type Suspect, stockOf } from '#lib/service/held-stock.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
import { buildName, type QueuedBuild } from '#lib/service/tickets.ts'

const madeAtOf = ({ madeAt, since }: Build): number => madeAt ?? since

const named = ({ ticket, build }: QueuedBuild): HandedOverBuild => ({
  build: buildName(ticket.number, build.letter),
  at: build.since,
})

/**
 * Since when what stands there isn't known to be good: its last reading in limits, or its load where
 * there is none since. Epoch milliseconds.
 */
export const notKnownSince = (state: RunningState, { what, id, lastGoodAt }: Suspect): number =>
  lastGoodAt ?? stockOf(state, what, id)?.loadedAt ?? 0

/** Whether food of a build came out of what stands there, since it was last known to be good. */
export const isMadeWith = (state: RunningState, build: Build, suspect: Suspect): boolean => {
  const since = madeAtOf(build)
  return (
    since >= notKnownSince(state, suspect) &&
    tookFrom(state, { ...build, since }, suspect.what, suspect.id)
  )
}

/**
 * Builds that were handed over with food of what stands there now, made since its last reading in
 * limits or its load; the first handed over first. Common practice, no source: whoever answers for the
 * food wants to know who has it already.
 */
export const handedOverWith = (state: RunningState, suspect: Suspect): readonly HandedOverBuild[] =>
  handedOverBuilds(state)
    .filter(({ build }) => isMadeWith(state, build, suspect))
    .map(named)
    .sort((one, other) => one.at - other.at)

/**
 * Builds that were handed over since a moment, epoch milliseconds, whenever they were made: until then
 * they stood on the shelf. The first handed over first.
 */
export const handedOverSince = (state: RunningState, since: number): readonly HandedOverBuild[] =>
  handedOverBuilds(state)
    .filter(({ build }) => build.since >= since)
    .map(named)
    .sort((one, other) => one.at - other.at)

/**
 * Builds that were handed over with food of a batch, out of whatever pan. What was taken beyond the
 * counts since it was finished may be of it.
 */
export const handedOverOfBatch = (
  state: RunningState,
  batch: string,
): readonly HandedOverBuild[] => {
  const { component, finishedAt } = state.batches[batch] ?? { component: '', finishedAt: null }
  const isBeyond = (build: Build): boolean => {
    const known = build.took
      .filter(({ pan }) => componentIn(state.station, pan) === component)
      .reduce((sum, { amount }) => sum + amount, 0)
    return (
      finishedAt !== null && madeAtOf(build) > finishedAt && known < (build.takes[component] ?? 0)
    )
  }
  return handedOverBuilds(state)
    .filter(
      ({ build }) => build.took.some((one) => one.batches?.includes(batch)) || isBeyond(build),
    )
    .map(named)
    .sort((one, other) => one.at - other.at)
}
