/** Places whose food nobody has said an end of, in line order. */

import type { Placed } from '#lib/service/place.ts'
import { allPlaces } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'
import { pansOf } from '#lib/station/find.ts'

const KINDS = ['pan', 'backup', 'batch'] as const

/** Whether food is there, or is still being made. */
const isThere = ({ stage, amount }: Placed): boolean =>
  stage === 'standing' || stage === 'making' || (stage === 'waiting' && amount > 0)

/**
 * Pans in the order of the line, each component's back-up pans and batches behind the last of its pans;
 * what has no pan stands at the end.
 */
export const toAnswer = (state: RunningState): readonly Placed[] => {
  const line = pansOf(state.station)
  const pan = new Map(line.map(({ id }, index) => [id, index]))
  const last = new Map(line.map(({ component }, index) => [component, index]))
  const rank = ({ what, id, component }: Placed): number =>
    (what === 'pan' ? pan.get(id) : last.get(component)) ?? line.length
  return allPlaces(state)
    .filter(isThere)
    .sort(
      (one, other) =>
        rank(one) - rank(other) || KINDS.indexOf(one.what) - KINDS.indexOf(other.what),
    )
}

/** Whether the service was planned: only then is each pan asked for before it closes. */
export const wasPlanned = (state: RunningState): boolean => state.plan !== undefined
