/** What of the larder may come into a service. */

import { dayOf, thawedMark } from '#lib/larder/days.ts'
import { type LarderState, type Lot, type LotFood, lotIn } from '#lib/larder/lot.ts'
import { lotTakeProblem, type TakeProblem } from '#lib/larder/take.ts'
import { waysTo } from '#lib/needs/declared.ts'
import type { RunningState } from '#lib/service/state.ts'
import { labelHere } from '#lib/station/filled.ts'
import { findComponent } from '#lib/station/find.ts'
import { isOfBefore } from '#lib/station/relabelled.ts'

/** What tells whether a lot is what this station calls so. */
export type HereNow = Pick<RunningState, 'station' | 'portions' | 'labelVersions'>

const madeHere = ({ station }: HereNow, component: string): readonly string[] | null => {
  const found = findComponent(station, component)
  if (!found) return null
  const ways = [...waysTo(station, found)].flatMap((way) => way.at(-1) ?? [])
  return [...new Set(ways)].filter((id) => !isOfBefore(id)).sort()
}

/** Why a lot isn't what this station calls so; null where it is. */
export const madeOtherwise = (state: HereNow, lot: Lot): TakeProblem | null => {
  const made = madeHere(state, lot.component)
  const isSame =
    made !== null &&
    made.length === lot.madeOf.length &&
    made.every((id, index) => id === lot.madeOf[index]) &&
    state.portions[lot.component]?.unit === lot.unit
  if (!isSame) return { code: 'made-otherwise' }
  if (lot.from.station !== state.station.id && lot.stoodOpen)
    return { code: 'stood-open-elsewhere' }
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
  const problem = lotTakeProblem(larder, id, asked) ?? (lot ? madeOtherwise(state, lot) : null)
  if (problem || !lot) return { problem: problem ?? { code: 'no-such-lot' } }
  const { amount, setAsideAt, since, version, place, bound, unreadSince, ...food } = lot
  // Another of the house may name allergens that this station's set doesn't.
  const before = food.before.map(({ ingredient, label }) => ({
    ingredient,
    label: labelHere(state.station, label),
  }))
  return {
    food: { ...food, before, finishedAt: food.finishedAt ?? setAsideAt, ...thawed(lot, asked.now) },
  }
}
