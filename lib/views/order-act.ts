/**
 * Taking an order, as a pure machine: what each tap does. The screen only draws it and carries its
 * command to the server.
 */
import { kindsOf } from '#lib/needs/askable.ts'
import type { Need, NeedCode, Reason } from '#lib/needs/codes.ts'
import type { RunningState } from '#lib/service/state.ts'
import { otherHandling, sameGuest, tapKind, tapNeed, tapReason } from '#lib/views/asking.ts'
import { changeBuild, tellNeed } from '#lib/views/changing.ts'
import { EMPTY_DRAFT } from '#lib/views/draft.ts'
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
} from '#lib/views/order-answered.ts'
import {
  type BuildAt,
  type Note,
  type Ordering,
  type Step,
  settleAll,
  withDraft,
} from '#lib/views/ordering.ts'
import { addPortion, chooseItem, tapPan } from '#lib/views/pan-tap.ts'

export type Act =
  | { readonly act: 'asked-none' }
  | { readonly act: 'need'; readonly code: NeedCode }
  | { readonly act: 'kind'; readonly group: NeedCode; readonly code: NeedCode }
  | { readonly act: 'handling'; readonly code: NeedCode }
  | { readonly act: 'reason'; readonly code: NeedCode; readonly reason: Reason }
  /** The next build is for a guest who was asked already. */
  | { readonly act: 'same-guest'; readonly index: number }
  | { readonly act: 'not-sure' }
  | { readonly act: 'ask-again' }
  | { readonly act: 'said-needs' }
  | { readonly act: 'choose'; readonly item: string }
  | { readonly act: 'tap'; readonly component: string }
  | { readonly act: 'more'; readonly component: string }
  | { readonly act: 'another' }
  | { readonly act: 'go-to'; readonly index: number }
  | { readonly act: 'drop' }
  /** The person in charge is called. */
  | { readonly act: 'in-charge' }
  /** The person in charge accepted the cautions of `food`, under this number. */
  | { readonly act: 'caution-accepted'; readonly caution: number; readonly food: string }
  /** The screen is turned to the guest of a build. */
  | { readonly act: 'turn'; readonly index: number }
  | { readonly act: 'agree' }
  | { readonly act: 'back' }
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
  | ({ readonly act: 'change-build' } & BuildAt)
  /** A guest who has ordered tells a need. */
  | ({ readonly act: 'tell-need' } & BuildAt)
  /** It was told, and the build is stopped. */
  | ({ readonly act: 'need-told' } & BuildAt)

const withNeeds = (ordering: Ordering, needs: readonly Need[]): Ordering => ({
  ...withDraft(ordering, { needs, asked: needs.length > 0 ? 'needs' : null }),
  sent: seen(ordering),
})

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
  'need-told',
  'same-guest',
  'back',
  'caution-accepted',
])

/** Keeps what stands there to be read, so that a later change by the pans is noticed. */
const saidCurrent = (ordering: Ordering, state: RunningState): Ordering => {
  const settled = settleAll(ordering, state)[ordering.current]?.settled
  if (ordering.step !== 'choose' || !settled) return ordering
  return { ...withDraft(ordering, { said: settled.reading }), note: ordering.note }
}

const dropCurrent = (ordering: Ordering): Ordering => {
  const drafts = ordering.drafts.filter((_, index) => index !== ordering.current)
  if (drafts.length === 0) return nextGuest(ordering)
  return goTo({ ...ordering, drafts, note: null }, Math.min(ordering.current, drafts.length - 1))
}

const cover = (ordering: Ordering, step: Step): Ordering => ({
  ...ordering,
  step,
  note: null,
  from: ordering.step === 'ask' || ordering.step === 'not-sure' ? 'ask' : 'choose',
})

const agree = (ordering: Ordering, state: RunningState): Ordering => {
  const settled = settleAll(ordering, state)[ordering.current]?.settled
  if (ordering.step !== 'turned' || !settled) return ordering
  return { ...withDraft(ordering, { agreed: settled.reading }), step: 'choose' }
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
      if (ordering.telling && draft.needs.length === 0) return nextGuest(ordering)
      return draft.needs.length > 0
        ? withDraft(ordering, { asked: null, needs: [] })
        : { ...withDraft(ordering, { asked: 'none' }), step: 'choose', sent: seen(ordering) }
    case 'need':
      return withNeeds(ordering, tapNeed(draft.needs, tap.code, kindsOf(state.station, tap.code)))
    case 'kind': {
      const kinds = kindsOf(state.station, tap.group)
      return withNeeds(ordering, tapKind(draft.needs, tap.group, tap.code, kinds))
    }
    case 'handling':
      return withDraft(ordering, { needs: otherHandling(draft.needs, tap.code) })
    case 'reason':
      return withDraft(ordering, { needs: tapReason(draft.needs, tap.code, tap.reason) })
    case 'same-guest':
      return sameGuest(ordering, tap.index)
    case 'in-charge':
      return cover(ordering, 'in-charge')
    case 'caution-accepted':
      return {
        ...withDraft(ordering, { accepted: { caution: tap.caution, food: tap.food } }),
        step: 'choose',
      }
    case 'turn':
      return cover({ ...ordering, current: tap.index }, 'turned')
    case 'agree':
      return agree(ordering, state)
    case 'back':
      return { ...ordering, step: ordering.from, note: null }
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
      return draft.needs.length > 0 && !ordering.telling
        ? { ...ordering, step: 'choose', note: null }
        : ordering
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
    case 'tell-need':
      return tellNeed(ordering, { ticket: tap.ticket, letter: tap.letter }, state)
    case 'need-told': {
      const { telling } = ordering
      const at = { ticket: tap.ticket, letter: tap.letter }
      return telling?.ticket === at.ticket && telling.letter === at.letter
        ? changeBuild(ordering, at, state)
        : ordering
    }
  }
}
