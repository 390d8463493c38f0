/** Whether a guest's choice can be accepted: of this menu, of what it may leave out, of its needs. */
import { findComponent, findItem } from '#lib/menu/find.ts'
import type { Item } from '#lib/menu/station-document.ts'
import type { Need } from '#lib/needs/codes.ts'
import { declaredBy } from '#lib/needs/declared.ts'
import {
  type Amounts,
  type BuildChoice,
  MOST_PORTIONS,
  type PartChoice,
  priceOf,
  takenComponents,
  takesOf,
  usualChoice,
} from '#lib/service/build-choice.ts'
import type { AcceptedBuild } from '#lib/service/event.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { RunningState } from '#lib/service/state.ts'

/** What a change starts from. */
type Accepted = Pick<AcceptedBuild, 'choice' | 'takes'>

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
      : { code: 'no-such-component', id }
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

const badNeeds = (state: RunningState, choice: BuildChoice): Refusal | null => {
  if (choice.asked === 'not-sure') return { code: 'not-sure' }
  if ((choice.asked === 'needs') !== choice.needs.length > 0) return { code: 'not-asked' }
  for (const component of takenComponents(choice))
    for (const { code: need, handling } of choice.needs) {
      const { state: declared } = declaredBy(state.station, component, need)
      if (declared === 'contains') return { code: 'contains', component, need }
      if (declared === 'unknown') return { code: 'unknown-declaration', component, need }
      if (declared === 'may-contain' && handling === 'keep-apart')
        return { code: 'may-contain', component, need }
    }
  return null
}

/** What isn't sold now. What a build was accepted with stays its own when it is changed. */
const notSold = (
  state: RunningState,
  choice: BuildChoice,
  takes: Amounts,
  before: Accepted | null,
): Refusal | null => {
  if (state.notSelling.item[choice.item] !== undefined && choice.item !== before?.choice.item)
    return { code: 'not-selling', what: 'item', id: choice.item }
  const stopped = takenComponents(choice).find(
    (id) =>
      state.notSelling.component[id] !== undefined && (takes[id] ?? 0) > (before?.takes[id] ?? 0),
  )
  return stopped === undefined ? null : { code: 'not-selling', what: 'component', id: stopped }
}

/** One need for each code: where a code is named twice, keep apart is the stricter. */
const strictest = (needs: readonly Need[]): readonly Need[] =>
  needs.filter((need, index) => {
    const same = needs.filter((one) => one.code === need.code)
    return needs.indexOf(same.find((one) => one.handling === 'keep-apart') ?? need) === index
  })

/** Parts that the sender didn't name are taken as the item usually has them. */
const complete = (item: Item, sent: BuildChoice): BuildChoice => ({
  ...sent,
  needs: strictest(sent.needs),
  parts: {
    ...usualChoice(item).parts,
    ...sent.parts,
  },
})

/**
 * A choice as an accepted build, or why not. Says nothing about what the pans hold.
 * `before` is the build that is changed, if one is.
 */
export const acceptBuild = (
  state: RunningState,
  letter: string,
  sent: BuildChoice,
  before: Accepted | null = null,
): { readonly build: AcceptedBuild } | { readonly refusal: Refusal } => {
  const item = findItem(state.station, sent.item)
  if (!item) return { refusal: { code: 'no-such-item', id: sent.item } }
  const base = sent.base
  if ((item.base === null) !== (base === null) || (base && !item.base?.choices.includes(base)))
    return { refusal: { code: 'base-missing', item: item.id } }
  for (const [id, part] of Object.entries(sent.parts)) {
    const refusal = badPart(state, item, id, part)
    if (refusal) return { refusal }
  }
  const choice = complete(item, sent)
  const taken = takenComponents(choice)
  if (taken.length === 0) return { refusal: { code: 'nothing-in-it' } }
  const takes = takesOf(choice, state.portions)
  const refusal = badNeeds(state, choice) ?? notSold(state, choice, takes, before)
  if (refusal) return { refusal }
  return {
    build: {
      letter,
      choice,
      takes,
      priceCents: priceOf(state.station, item, choice),
    },
  }
}
