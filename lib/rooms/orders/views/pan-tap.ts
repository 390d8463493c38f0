/** What a tap on an item or on a pan of the line makes of the order. */

import { canAdd, settle } from '#lib/rooms/orders/facts/draft.ts'
import { standingOf } from '#lib/rooms/orders/facts/offer.ts'
import { keepsInItem } from '#lib/rooms/orders/views/counter.ts'
import { type Note, type Ordering, settleAll, withDraft } from '#lib/rooms/orders/views/ordering.ts'
import { tapped } from '#lib/rooms/orders/views/tap-cycle.ts'
import type { RunningState } from '#lib/service/state.ts'

export const chooseItem = (ordering: Ordering, item: string, state: RunningState): Ordering => {
  const draft = ordering.drafts[ordering.current]
  if (!draft || draft.item === item) return { ...ordering, note: null }
  const offer = settleAll(ordering, state)[ordering.current]?.offer
  const settled = offer ? settle(offer, { ...draft, item, base: null, wishes: {} }) : null
  if (!settled) return ordering
  if (settled.blocked)
    return { ...ordering, note: { kind: 'item-cannot', item, blocked: settled.blocked } }
  return withDraft(ordering, { item, base: null, wishes: {} })
}

export const tapPan = (ordering: Ordering, component: string, state: RunningState): Ordering => {
  const found = settleAll(ordering, state)[ordering.current]
  const draft = ordering.drafts[ordering.current]
  if (!found?.settled || !draft) return ordering
  const { item, parts, base } = found.settled
  const say = (note: Note): Ordering => ({ ...ordering, note })
  const part = parts.find((one) => one.part.component === component)
  const isBase = item.base?.choices.includes(component) ?? false
  if (!part && !isBase) return say({ kind: 'not-of-item', item: item.id, component })
  const standing = standingOf(found.offer, component)
  if (standing.kind !== 'free') return say({ kind: 'cannot', component, standing })
  if (!part)
    return base?.component === component
      ? say({ kind: 'base', item: item.id })
      : withDraft(ordering, { base: component })
  const wish = tapped(found.offer, item, part)
  if (wish.placement === part.placement && keepsInItem(item, component) && part.portions === 1)
    return say({ kind: 'kept', item: item.id, component })
  return withDraft(ordering, { wishes: { ...draft.wishes, [component]: wish } })
}

export const addPortion = (
  ordering: Ordering,
  component: string,
  state: RunningState,
): Ordering => {
  const draft = ordering.drafts[ordering.current]
  const part = settleAll(ordering, state)[ordering.current]?.settled?.parts.find(
    (one) => one.part.component === component,
  )
  if (!draft || !part || !canAdd(part)) return ordering
  const wish = { placement: part.placement, portions: part.portions + 1 }
  return withDraft(ordering, { wishes: { ...draft.wishes, [component]: wish } })
}
