/** What of the larder may come into a service. */

import { dayOf, thawedMark } from '#lib/larder/days.ts'
import { type LarderState, type Lot, type LotFood, lotIn } from '#lib/larder/lot.ts'
import { lotTakeProblem, type TakeProblem } from '#lib/larder/take.ts'
import { boughtFor, isTouchKnown, marksOf } from '#lib/rooms/food/facts/larder/touched-here.ts'
import type { RunningState } from '#lib/service/state.ts'
import { labelHere } from '#lib/station/filled.ts'

/** What tells whether a lot is what this station calls so. */
export type HereNow = Pick<RunningState, 'station' | 'portions' | 'labelVersions'>

/** Why a lot isn't what this station calls so; null where it is. */
export const madeOtherwise = (state: HereNow, lot: Lot): TakeProblem | null => {
  const made = boughtFor(state.station, lot.component)
  const isSame =
    made !== null &&
    made.length === lot.madeOf.length &&
    made.every((id, index) => id === lot.madeOf[index]) &&
    state.portions[lot.component]?.unit === lot.unit
  if (!isSame) return { code: 'made-otherwise' }
  if (lot.from.station !== state.station.id && lot.stoodOpen)
    return { code: 'stood-open-elsewhere' }
  if (!isTouchKnown(state.station, lot)) return { code: 'touched-unknown' }
  const ingredient = lot.madeOf.find(
    (id) => (lot.labels?.[id] ?? 0) !== (state.labelVersions?.[id] ?? 0),
  )
  return ingredient === undefined ? null : { code: 'label-changed', ingredient }
}

/** As it goes into a service: thawed from today on, where it is frozen. `now` in epoch milliseconds. */
const thawed = (lot: Lot, now: number): Pick<LotFood, 'kept' | 'frozen' | 'dateMark'> => {
  const { kept, frozen, dateMark } = lot
  if (frozen === null) return { kept, frozen, dateMark }
  return { kept: 'cold', frozen: null, dateMark: thawedMark({ ...lot, frozen }, dayOf(lot, now)) }
}

/** Why so much of a lot isn't taken into a service, or what goes along with it. */
export const takenFromLarder = (
  state: RunningState,
  larder: LarderState,
  id: string,
  asked: { readonly amount: number; readonly now: number; readonly saysWhy: boolean },
): { readonly problem: TakeProblem } | { readonly food: LotFood } => {
  const lot = lotIn(larder, id)
  const barredHere = (one: Lot) => madeOtherwise(state, one)
  const problem = lotTakeProblem(larder, id, { ...asked, barredHere })
  if (problem || !lot) return { problem: problem ?? { code: 'no-such-lot' } }
  const { amount, setAsideAt, since, version, place, bound, unreadSince, ...food } = lot
  // Another of the house may name allergens that this station's set doesn't.
  const before = food.before.map(({ ingredient, label }) => ({
    ingredient,
    label: labelHere(state.station, label),
  }))
  return {
    food: {
      ...food,
      before,
      soiledBy: marksOf(state.station, lot),
      finishedAt: food.finishedAt ?? setAsideAt,
      ...thawed(lot, asked.now),
    },
  }
}
