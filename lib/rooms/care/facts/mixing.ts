/** Products of before that are still in the pans: until those are changed or washed both count. */

import { componentsWith } from '#lib/needs/made-with.ts'
import type { Place } from '#lib/service/events/food-event.ts'
import type { LabelChanged } from '#lib/service/events/line-event.ts'
import { keyOf, mayHold } from '#lib/service/held-stock.ts'
import { allPlaces, type Placed } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'
import { beforeId, relabelled, withBefore, withoutBefore } from '#lib/station/relabelled.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** What a place is called among what holds a product of before: older logs know pans by their id. */
export const mixKey = ({ what, id }: Place): string => (what === 'batch' ? keyOf(what, id) : id)

const holdsStill = ({ stage, amount, full, what }: Placed): boolean =>
  what === 'batch' ? stage !== 'gone' : mayHold({ amount, full })

/**
 * Pans, of the line and behind it, and batches that hold food made with an ingredient. What seems to be
 * used up, or was counted to nothing, may be counted up again, or a finish be taken back: it holds it
 * until it is thrown out or filled anew.
 */
export const pansHolding = (state: RunningState, ingredient: string): readonly string[] => {
  const made = componentsWith(state.station, ingredient)
  return allPlaces(state)
    .filter((one) => made.includes(one.component) && holdsStill(one))
    .map(mixKey)
}

/** Which component a place is of, by what it is called here. */
export const componentHeldIn = (state: RunningState, key: string): string | undefined =>
  allPlaces(state).find((one) => mixKey(one) === key)?.component

const allBefore = (state: RunningState): readonly string[] =>
  Object.values(state.mixing).flatMap((one) => one.before)

/** The station's own document, without what is only in today's pans. */
export const ownDocument = (state: RunningState): StationDocument =>
  withoutBefore(state.station, allBefore(state))

type Mixed = Pick<RunningState, 'station' | 'mixing'>

const isRead = (state: RunningState, ingredient: string): boolean =>
  state.station.ingredients.some((one) => one.id === ingredient && one.readOn !== null)

/**
 * A label as it is from now on. Where it is of another product, what the pans hold goes on counting
 * beside it; one that nobody has read in between was never known to be in them.
 */
export const mixedBy = (
  state: RunningState,
  { ingredient, label, pans }: Pick<LabelChanged, 'ingredient' | 'label' | 'pans'>,
): Mixed => {
  const known = state.mixing[ingredient] ?? { pans: [], before: [] }
  if (pans.length === 0)
    return { station: relabelled(state.station, ingredient, label), mixing: state.mixing }
  const isNew = known.before.length === 0 || isRead(state, ingredient)
  const id = beforeId(ingredient, known.before.length + 1)
  return {
    station: relabelled(
      isNew ? withBefore(state.station, ingredient, id) : state.station,
      ingredient,
      label,
    ),
    mixing: {
      ...state.mixing,
      [ingredient]: {
        pans: [...new Set([...known.pans, ...pans])],
        before: isNew ? [...known.before, id] : known.before,
      },
    },
  }
}

/** A pan that was changed or washed holds nothing from before any more. */
export const unmixedBy = (state: RunningState, pan: string): Mixed => {
  const { mixing } = state
  if (!Object.values(mixing).some((one) => one.pans.includes(pan)))
    return { station: state.station, mixing }
  const left = Object.entries(mixing).map(
    ([ingredient, one]) =>
      [ingredient, { ...one, pans: one.pans.filter((other) => other !== pan) }] as const,
  )
  const gone = left.filter(([, one]) => one.pans.length === 0).flatMap(([, one]) => one.before)
  return {
    station: withoutBefore(state.station, gone),
    mixing: Object.fromEntries(left.filter(([, one]) => one.pans.length > 0)),
  }
}

/** Food that goes from a back-up pan into a pan of the line takes what is mixed in it along. */
export const movedMix = (
  state: RunningState,
  from: string,
  to: string,
  stays = false,
): Pick<RunningState, 'mixing'> => ({
  mixing: Object.fromEntries(
    Object.entries(state.mixing).map(([ingredient, one]) =>
      one.pans.includes(from)
        ? [
            ingredient,
            {
              ...one,
              pans: [...new Set([...one.pans.filter((pan) => stays || pan !== from), to])],
            },
          ]
        : [ingredient, one],
    ),
  ),
})
