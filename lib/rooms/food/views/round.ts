/** A round of readings as a screen takes it: place after place, what to probe and by which limit. */

import { heldByAt } from '#lib/rooms/food/facts/place-now.ts'
import {
  broughtBy,
  broughtWithLoad,
  probeKey,
  probeTrail,
} from '#lib/rooms/food/facts/probe-trail.ts'
import { type DueInRound, placeInRound } from '#lib/rooms/food/facts/round.ts'
import { waysFor } from '#lib/rooms/food/facts/ways-out.ts'
import {
  type EntryLimit,
  type HowProbed,
  holdingLimit,
  howProbed,
} from '#lib/rooms/food/views/reading-entry.ts'
import type { WayOut } from '#lib/safety/holding.ts'
import { meets } from '#lib/safety/limits.ts'
import type { ProbeAt, Reading, ReadingContext } from '#lib/safety/readings.ts'
import type { Place, PlaceKind } from '#lib/service/events/food-event.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findComponent } from '#lib/station/find.ts'

export interface RoundStep extends Pick<DueInRound, 'why' | 'dueBy' | 'isProtected'> {
  readonly what: PlaceKind
  readonly id: string
  readonly component: string
  readonly heldBy: 'hot' | 'cold' | 'time'
  readonly how: HowProbed
  /** As the reading says it. */
  readonly where: ProbeAt
  readonly limit: EntryLimit
  readonly context: ReadingContext
  readonly last: Reading | null
  /** Whether the last one kept the limit; null where there is none. */
  readonly wasIn: boolean | null
  /** What may be done with it while it is out of its limits; nothing while it isn't. */
  readonly ways: readonly WayOut[]
}

const stepOf = (state: RunningState, due: DueInRound, now: number): RoundStep | null => {
  const { place, why, dueBy, isProtected } = due
  const { what, id, newest } = place
  const component = findComponent(state.station, place.component)
  const heldBy = heldByAt(state, place, now)
  if (!component || heldBy === null || heldBy === 'dry') return null
  const limit: EntryLimit =
    heldBy === 'time'
      ? { kind: 'temperature', limit: limitsOf(state.station).timeOnlyWarmest }
      : holdingLimit(state.station, component, heldBy)
  const how = howProbed(component)
  const met = newest && limit.kind === 'temperature' ? meets(newest.temperature, limit.limit) : null
  return {
    what,
    id,
    component: component.id,
    heldBy,
    why,
    dueBy,
    isProtected,
    how,
    where: how === 'piece' ? 'thickest-part' : 'middle-stirred',
    limit,
    context: heldBy === 'hot' ? 'hot-holding' : 'cold-holding',
    last: newest,
    wasIn: met,
    ways: why === 'out' ? waysFor(state, what, id, now) : [],
  }
}

/** One place of a round, due or read already; null where nothing is read of it. */
export const stepAt = (state: RunningState, at: Place, now: number): RoundStep | null => {
  const due = placeInRound(state, at, now)
  return due && stepOf(state, due, now)
}

/** As `probeBrings`, of what is put into an empty pan: null for one of the line. */
export const loadBrings = (
  state: RunningState,
  pan: string,
  probe: string,
): readonly string[] | null => broughtWithLoad(state, pan, { probe }).brought ?? null

/**
 * Whether a probe was in food since it was last said to be cleaned, so that it is cleaned before the next.
 * @param unsent probes of readings that were typed and not sent yet
 */
export const isProbeUsed = (
  state: RunningState,
  probe: string,
  unsent: readonly string[] = [],
): boolean =>
  probe.trim() !== '' &&
  (probeTrail(state, probe).length > 0 || unsent.some((one) => probeKey(one) === probeKey(probe)))

/**
 * What a probe would bring into a place that is kept apart, unless it is cleaned before; null where
 * nothing. An empty list: only what is on the line of the same food.
 */
export const probeBrings = (
  state: RunningState,
  step: Pick<RoundStep, 'what' | 'id'>,
  probe: string,
): readonly string[] | null => broughtBy(state, step, { probe }).brought ?? null
