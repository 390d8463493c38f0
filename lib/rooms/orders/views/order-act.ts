/**
 * Taking an order, as a pure machine: what each tap does. The screen only draws it and carries its
 * command to the server.
 */

import { type Draft, EMPTY_DRAFT } from '#lib/rooms/orders/facts/draft.ts'
import {
  otherHandling,
  sameGuest,
  tapKind,
  tapNeed,
  tapReason,
  withKept,
} from '#lib/rooms/orders/views/asking.ts'
import {
  changeBuild,
  keptNeeds,
  needTold,
  otherAnswered,
  tellNeed,
} from '#lib/rooms/orders/views/changing.ts'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import {
  accepted,
  arrivedTold,
  cameBack,
  goTo,
  leftAccepted,
  nextGuest,
  openReturned,
  park,
  refused,
  restored,
} from '#lib/rooms/orders/views/order-answered.ts'
import { type Ordering, type Step, settleAll, withDraft } from '#lib/rooms/orders/views/ordering.ts'
import { addPortion, chooseItem, tapPan } from '#lib/rooms/orders/views/pan-tap.ts'
import { toAskOf } from '#lib/rooms/orders/views/to-ask-of.ts'
import type { RunningState } from '#lib/service/state.ts'
import { kindsOf } from '#lib/station/codes/askable.ts'
import type { Need, NeedCode } from '#lib/station/codes/codes.ts'

const withNeeds = (ordering: Ordering, needs: readonly Need[]): Ordering => ({
  ...withDraft(ordering, { needs, asked: needs.length > 0 ? 'needs' : null }),
  sent: seen(ordering),
})

/** Choices that the student makes in sight of the sentence: it is read as they leave it. */
const CHOICES: ReadonlySet<Act['act']> = new Set(['choose', 'tap', 'more', 'caution-accepted'])

/**
 * What counts as read back after a tap: what stands there is, the first time that it does; after a
 * choice of the student's own, where it stood there as said until then; and where they say that
 * they read it. Whatever else changed it, pans, labels or needs, is to be said again.
 */
const withSaid = (before: Ordering, after: Ordering, tap: Act, state: RunningState): Ordering => {
  const reading = settleAll(after, state)[after.current]?.reading
  if (after.step !== 'choose' || !reading) return after
  const said = after.drafts[after.current]?.said ?? null
  const stood = settleAll(before, state)[after.current]?.reading
  const isOwn = CHOICES.has(tap.act) && said?.key === stood?.key
  if (said !== null && !isOwn && tap.act !== 'read-again') return after
  return { ...withDraft(after, { said: reading }), note: after.note }
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
  const reading = settleAll(ordering, state)[ordering.current]?.reading
  if (ordering.step !== 'turned' || !reading) return ordering
  return { ...withDraft(ordering, { agreed: reading.key }), step: 'choose' }
}

/** The needs were told: on to the food, but for what is asked once more. */
const saidNeeds = (
  ordering: Ordering,
  draft: Draft,
  { isSaid }: Extract<Act, { readonly act: 'said-needs' }>,
): Ordering => {
  const asked = toAskOf(draft)
  if (asked.length > 0 && !isSaid) return ordering
  const asSaid = [...(draft.asSaid ?? []), ...asked]
  const next = asked.length > 0 ? withDraft(ordering, { asSaid }) : ordering
  return { ...next, step: 'choose', note: null }
}

/** A food chosen as soon as a guest told a need: what is said with it counts as said. */
const answered = (ordering: Ordering, draft: Draft): Ordering =>
  ordering.step === 'ask' && draft.needs.length > 0 && !ordering.telling
    ? saidNeeds(ordering, draft, { act: 'said-needs' })
    : ordering

/** Nothing is chosen before the guest has answered. */
const chooseFrom = (ordering: Ordering, item: string, state: RunningState): Ordering =>
  ordering.step === 'choose' ? chooseItem(ordering, item, state) : ordering

/** Taps that are let through while an order waits for its answer. */
const WHILE_SENDING: readonly Act['act'][] = [
  'accepted',
  'refused',
  'left-accepted',
  'came-back',
  'arrived-told',
  'next-guest',
]

/** What a tap makes of the order. Changes nothing itself. */
export const act = (ordering: Ordering, tap: Act, state: RunningState): Ordering => {
  if (ordering.sending !== null && !WHILE_SENDING.includes(tap.act)) return ordering
  return withSaid(ordering, afterTap(ordering, tap, state), tap, state)
}

/** A guest's first answer clears what was told before; what is told during an order is kept. */
const seen = ({ drafts, sent }: Ordering): Ordering['sent'] =>
  drafts.some((draft) => draft.item !== null) ? sent : []

const afterTap = (ordering: Ordering, tap: Act, state: RunningState): Ordering => {
  const draft = ordering.drafts[ordering.current] ?? EMPTY_DRAFT
  const kept = keptNeeds(ordering, state)
  /** What an accepted build keeps from stays, as strict. */
  const told = (needs: readonly Need[]) => withNeeds(ordering, withKept(needs, kept))
  /** A kind that stays is beyond the tile of its group. */
  const freeKinds = (group: NeedCode) =>
    kindsOf(state.station, group).filter((kind) => !kept.some((one) => one.code === kind))
  switch (tap.act) {
    case 'asked-none':
      if (ordering.telling && draft.needs.length === 0) return nextGuest(ordering)
      return draft.needs.length > 0
        ? withDraft(ordering, { asked: kept.length > 0 ? 'needs' : null, needs: kept })
        : { ...withDraft(ordering, { asked: 'none' }), step: 'choose', sent: seen(ordering) }
    case 'need':
      return told(tapNeed(draft.needs, tap.code, freeKinds(tap.code)))
    case 'kind': {
      const kinds = kindsOf(state.station, tap.group)
      return told(tapKind(draft.needs, tap.group, tap.code, kinds))
    }
    case 'handling':
      return told(otherHandling(draft.needs, tap.code))
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
        ? saidNeeds(ordering, draft, tap)
        : ordering
    case 'choose':
      return chooseFrom(answered(ordering, draft), tap.item, state)
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
    case 'read-again':
      return { ...ordering, note: null }
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
      return accepted(ordering, tap.id, tap.isLate === true)
    case 'arrived-told':
      return arrivedTold(ordering, tap.id)
    case 'restored':
      return restored(ordering, tap.ordering)
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
      return changeBuild(ordering, tap, state, tap.way)
    case 'tell-need':
      return tellNeed(ordering, { ticket: tap.ticket, letter: tap.letter }, state)
    case 'need-told': {
      const { telling } = ordering
      return telling?.ticket === tap.ticket && telling.letter === tap.letter
        ? needTold(ordering, tap.told, state)
        : ordering
    }
    case 'other-answered':
      return otherAnswered(ordering, tap.letter, state)
  }
}
