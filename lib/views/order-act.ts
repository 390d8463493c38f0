/**
 * Taking an order, as a pure machine: what each tap does. The screen only draws it and carries its
 * command to the server.
 */
import { findItem } from '#lib/menu/find.ts'
import { isDiet, type Need, type NeedCode } from '#lib/needs/codes.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findBuild } from '#lib/service/tickets.ts'
import { keepsInItem } from '#lib/views/counter.ts'
import { canAdd, type Draft, draftOf, EMPTY_DRAFT, settle, tapped } from '#lib/views/draft.ts'
import { standingOf } from '#lib/views/offer.ts'
import {
  accepted,
  cameBack,
  goTo,
  type LeftCommand,
  leftAccepted,
  nextGuest,
  openReturned,
  park,
  refused,
  reopen,
} from '#lib/views/order-answered.ts'
import { type Note, type Ordering, settleAll } from '#lib/views/ordering.ts'

export type Act =
  | { readonly act: 'asked-none' }
  | { readonly act: 'need'; readonly code: NeedCode }
  | { readonly act: 'handling'; readonly code: NeedCode }
  | { readonly act: 'not-sure' }
  | { readonly act: 'ask-again' }
  | { readonly act: 'said-needs' }
  | { readonly act: 'choose'; readonly item: string }
  | { readonly act: 'tap'; readonly component: string }
  | { readonly act: 'more'; readonly component: string }
  | { readonly act: 'another' }
  | { readonly act: 'go-to'; readonly index: number }
  | { readonly act: 'drop' }
  | { readonly act: 'name'; readonly name: string }
  | { readonly act: 'paid' }
  | { readonly act: 'start-over' }
  | { readonly act: 'send'; readonly id: string }
  | { readonly act: 'next-guest' }
  | { readonly act: 'accepted'; readonly id: string }
  | { readonly act: 'refused'; readonly id: string; readonly note: Note }
  /** What an earlier load of the page, or another step, left waiting was accepted. */
  | { readonly act: 'left-accepted'; readonly id: string; readonly sent: LeftCommand }
  | {
      readonly act: 'came-back'
      readonly id: string
      readonly sent: LeftCommand
      readonly note: Note
    }
  | { readonly act: 'open-returned'; readonly id: string }
  | { readonly act: 'drop-returned'; readonly id: string }
  | { readonly act: 'tickets' }
  | { readonly act: 'change-build'; readonly ticket: number; readonly letter: string }

const withDraft = (ordering: Ordering, change: Partial<Draft>): Ordering => ({
  ...ordering,
  note: null,
  drafts: ordering.drafts.map((draft, index) =>
    index === ordering.current ? { ...draft, ...change } : draft,
  ),
})

const toggled = (needs: readonly Need[], code: NeedCode): readonly Need[] =>
  needs.some((one) => one.code === code)
    ? needs.filter((one) => one.code !== code)
    : [...needs, { code, handling: isDiet(code) ? 'leave-out' : 'keep-apart', reason: null }]

const otherHandling = (need: Need): Need => ({
  ...need,
  handling: need.handling === 'keep-apart' ? 'leave-out' : 'keep-apart',
})

const chooseItem = (ordering: Ordering, item: string, state: RunningState): Ordering => {
  const draft = ordering.drafts[ordering.current]
  if (!draft || draft.item === item) return { ...ordering, note: null }
  const offer = settleAll(ordering, state)[ordering.current]?.offer
  const settled = offer ? settle(offer, { ...draft, item, base: null, wishes: {} }) : null
  if (!settled) return ordering
  if (settled.blocked)
    return { ...ordering, note: { kind: 'item-cannot', item, blocked: settled.blocked } }
  return withDraft(ordering, { item, base: null, wishes: {} })
}

const tapPan = (ordering: Ordering, component: string, state: RunningState): Ordering => {
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
      : withDraft(ordering, { base: component === item.base?.usual ? null : component })
  const wish = tapped(found.offer, item, part)
  if (wish.placement === part.placement && keepsInItem(item, component) && part.portions === 1)
    return say({ kind: 'kept', item: item.id, component })
  return withDraft(ordering, { wishes: { ...draft.wishes, [component]: wish } })
}

const addPortion = (ordering: Ordering, component: string, state: RunningState): Ordering => {
  const draft = ordering.drafts[ordering.current]
  const part = settleAll(ordering, state)[ordering.current]?.settled?.parts.find(
    (one) => one.part.component === component,
  )
  if (!draft || !part || !canAdd(part)) return ordering
  const wish = { placement: part.placement, portions: part.portions + 1 }
  return withDraft(ordering, { wishes: { ...draft.wishes, [component]: wish } })
}

/** Taps after which the current build stands there to be read, as it is by then. */
const SHOWS_BUILD: ReadonlySet<Act['act']> = new Set([
  'asked-none',
  'said-needs',
  'choose',
  'tap',
  'more',
  'go-to',
  'drop',
  'open-returned',
  'change-build',
])

/** Keeps what stands there to be read, so that a later change by the pans is noticed. */
const saidCurrent = (ordering: Ordering, state: RunningState): Ordering => {
  const settled = settleAll(ordering, state)[ordering.current]?.settled
  if (ordering.step !== 'choose' || !settled) return ordering
  return { ...withDraft(ordering, { said: settled.choice }), note: ordering.note }
}

const dropCurrent = (ordering: Ordering): Ordering => {
  const drafts = ordering.drafts.filter((_, index) => index !== ordering.current)
  if (drafts.length === 0) return nextGuest(ordering)
  return goTo({ ...ordering, drafts, note: null }, Math.min(ordering.current, drafts.length - 1))
}

const changeBuild = (
  ordering: Ordering,
  at: { readonly ticket: number; readonly letter: string },
  state: RunningState,
): Ordering => {
  const build = findBuild(state, at.ticket, at.letter)
  if (!build) return ordering
  const drafts = [draftOf(findItem(state.station, build.choice.item), build.choice)]
  return reopen(ordering, { drafts, name: '', paid: false, changing: at }, null)
}

/** Taps that are let through while an order waits for its answer. */
const WHILE_SENDING: readonly Act['act'][] = [
  'accepted',
  'refused',
  'left-accepted',
  'came-back',
  'next-guest',
]

/** What a tap makes of the order. Changes nothing itself. */
export const act = (ordering: Ordering, tap: Act, state: RunningState): Ordering => {
  if (ordering.sending !== null && !WHILE_SENDING.includes(tap.act)) return ordering
  const after = afterTap(ordering, tap, state)
  return SHOWS_BUILD.has(tap.act) ? saidCurrent(after, state) : after
}

/** A guest's first answer clears what was told before; what is told during an order is kept. */
const seen = ({ drafts, sent }: Ordering): Ordering['sent'] =>
  drafts.some((draft) => draft.item !== null) ? sent : []

const afterTap = (ordering: Ordering, tap: Act, state: RunningState): Ordering => {
  const draft = ordering.drafts[ordering.current] ?? EMPTY_DRAFT
  switch (tap.act) {
    case 'asked-none':
      return draft.needs.length > 0
        ? withDraft(ordering, { asked: null, needs: [] })
        : { ...withDraft(ordering, { asked: 'none' }), step: 'choose', sent: seen(ordering) }
    case 'need': {
      const needs = toggled(draft.needs, tap.code)
      return {
        ...withDraft(ordering, { needs, asked: needs.length > 0 ? 'needs' : null }),
        sent: seen(ordering),
      }
    }
    case 'handling':
      return withDraft(ordering, {
        needs: draft.needs.map((one) => (one.code === tap.code ? otherHandling(one) : one)),
      })
    case 'not-sure':
      return {
        ...withDraft(ordering, { asked: 'not-sure' }),
        step: 'not-sure',
        sent: seen(ordering),
      }
    case 'ask-again':
      return {
        ...withDraft(ordering, { asked: draft.needs.length > 0 ? 'needs' : null }),
        step: 'ask',
      }
    case 'said-needs':
      return draft.needs.length > 0 ? { ...ordering, step: 'choose', note: null } : ordering
    case 'choose':
      return chooseItem(ordering, tap.item, state)
    case 'tap':
      return tapPan(ordering, tap.component, state)
    case 'more':
      return addPortion(ordering, tap.component, state)
    case 'another': {
      const drafts = [...ordering.drafts, EMPTY_DRAFT]
      return goTo({ ...ordering, drafts, note: null }, drafts.length - 1)
    }
    case 'go-to':
      return goTo({ ...ordering, note: null }, tap.index)
    case 'drop':
      return dropCurrent(ordering)
    case 'name':
      return { ...ordering, name: tap.name.trim() }
    case 'paid':
      return { ...ordering, paid: !ordering.paid }
    case 'start-over':
      return { ...nextGuest(ordering), sent: ordering.step === 'tickets' ? ordering.sent : [] }
    case 'send':
      return { ...ordering, sending: tap.id, note: null }
    case 'next-guest':
      return park(ordering)
    case 'accepted':
      return accepted(ordering, tap.id)
    case 'refused':
      return refused(ordering, tap.id, tap.note)
    case 'came-back':
      return cameBack(ordering, tap, state)
    case 'left-accepted':
      return leftAccepted(ordering, tap.id, tap.sent)
    case 'open-returned':
      return openReturned(ordering, tap.id)
    case 'drop-returned':
      return { ...ordering, returned: ordering.returned.filter((one) => one.id !== tap.id) }
    case 'tickets':
      return { ...ordering, step: 'tickets' }
    case 'change-build':
      return changeBuild(ordering, { ticket: tap.ticket, letter: tap.letter }, state)
  }
}
