/** Whether a guest's choice is one of this menu, with an answer that this station can be given. */

import { strictest } from '#lib/needs/judge.ts'
import {
  type BuildChoice,
  MOST_PORTIONS,
  type PartChoice,
  takenComponents,
  usualChoice,
} from '#lib/service/events/build-choice.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { RunningState } from '#lib/service/state.ts'
import { isKnownNeed } from '#lib/station/codes/askable.ts'
import type { Asked, Need } from '#lib/station/codes/codes.ts'
import { findComponent, findItem } from '#lib/station/find.ts'
import type { Item } from '#lib/station/station-document.ts'

const badPart = (
  state: RunningState,
  item: Item,
  id: string,
  chosen: PartChoice,
): Refusal | null => {
  const part = item.parts.find((one) => one.component === id)
  if (!part) {
    return findComponent(state.station, id)
      ? { code: 'not-of-this-item', item: item.id, component: id }
      : { code: 'unknown', what: 'component', id }
  }
  const { placement, portions } = chosen
  const isCount = Number.isInteger(portions) && portions >= 0 && portions <= MOST_PORTIONS
  if (!isCount || (placement === 'no') !== (portions === 0))
    return { code: 'absurd-portions', component: id, most: MOST_PORTIONS }
  if (placement === 'no' && (part.required || id === item.heart))
    return { code: 'cannot-leave-out', item: item.id, component: id }
  if (placement === 'side' && !findComponent(state.station, id)?.side)
    return { code: 'no-cups', component: id }
  return null
}

/** Whether an answer and its needs agree, and are of what this station can be asked. */
export const badAnswer = (
  state: RunningState,
  asked: Asked,
  needs: readonly Need[],
): Refusal | null => {
  if ((asked === 'needs') !== needs.length > 0) return { code: 'not-asked' }
  const unknown = needs.find((need) => !isKnownNeed(state.station, need.code))
  return unknown ? { code: 'unknown', what: 'need', id: unknown.code } : null
}

/** Parts that the sender didn't name are taken as the item usually has them. */
const complete = (item: Item, sent: BuildChoice): BuildChoice => ({
  ...sent,
  needs: strictest(sent.needs),
  parts: {
    ...usualChoice(item).parts,
    ...sent.parts,
  },
})

/** A choice of this menu with an answer, complete; says nothing yet about whether it fits. */
export const chosen = (
  state: RunningState,
  sent: BuildChoice,
): { readonly item: Item; readonly choice: BuildChoice } | { readonly refusal: Refusal } => {
  const item = findItem(state.station, sent.item)
  if (!item) return { refusal: { code: 'unknown', what: 'item', id: sent.item } }
  const base = sent.base
  if ((item.base === null) !== (base === null) || (base && !item.base?.choices.includes(base)))
    return { refusal: { code: 'base-missing', item: item.id } }
  for (const [id, part] of Object.entries(sent.parts)) {
    const refusal = badPart(state, item, id, part)
    if (refusal) return { refusal }
  }
  const choice = complete(item, sent)
  if (takenComponents(choice).length === 0) return { refusal: { code: 'nothing-in-it' } }
  if (choice.asked === 'not-sure') return { refusal: { code: 'not-sure' } }
  const refusal = badAnswer(state, choice.asked, choice.needs)
  return refusal ? { refusal } : { item, choice }
}
