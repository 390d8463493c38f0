/** What becomes of an order once it is sent: answered, parked while it waits, or come back. */

import type { CancelCommand } from '#lib/rooms/orders/commands/cancel.ts'
import type { ChangeCommand } from '#lib/rooms/orders/commands/change.ts'
import type { SendCommand } from '#lib/rooms/orders/commands/send.ts'
import { type Draft, draftOf } from '#lib/rooms/orders/facts/draft.ts'
import {
  type Arrived,
  IDLE,
  type Note,
  type Order,
  type Ordering,
  type Returned,
  type Sent,
} from '#lib/rooms/orders/views/ordering.ts'
import type { BuildChoice } from '#lib/service/events/build-choice.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findItem } from '#lib/station/find.ts'

/** Commands that a guest waits for, so that what became of them is told whoever sent them. */
export type LeftCommand = SendCommand | ChangeCommand | CancelCommand

export const isLeft = <Sent extends { readonly type: string }>(
  command: Sent | LeftCommand,
): command is LeftCommand =>
  command.type === 'send' || command.type === 'change' || command.type === 'cancel'

const orderOf = ({ drafts, name, paid, changing }: Ordering): Order => ({
  drafts,
  name,
  paid,
  changing,
})

/** A fresh order; what waits, came back or was sent stays in sight. */
export const nextGuest = (ordering: Ordering): Ordering => ({
  ...IDLE,
  sent: ordering.sent,
  arrived: ordering.arrived,
  parked: ordering.parked,
  returned: ordering.returned,
})

/** Nothing of an order was typed yet, and nothing is on its way. */
export const isUntouched = ({ step, drafts, changing, telling, sending }: Ordering): boolean => {
  const [first, ...others] = drafts
  return (
    step === 'ask' &&
    sending === null &&
    changing === null &&
    telling === null &&
    others.length === 0 &&
    first !== undefined &&
    first.asked === null &&
    first.needs.length === 0 &&
    first.item === null
  )
}

const isAsked = (draft: Draft | undefined): boolean =>
  draft?.asked === 'none' || draft?.asked === 'needs'

export const goTo = (ordering: Ordering, index: number): Ordering => ({
  ...ordering,
  current: index,
  step: isAsked(ordering.drafts[index]) ? 'choose' : 'ask',
})

export const reopen = (ordering: Ordering, order: Order, note: Note | null): Ordering =>
  goTo({ ...nextGuest(ordering), ...order, note, sent: [] }, 0)

const answered = (ordering: Ordering, id: string): Ordering => ({
  ...ordering,
  parked: ordering.parked.filter((one) => one.id !== id),
})

const sentOf = (id: string, changing: Order['changing']): Sent =>
  changing
    ? { kind: 'changed', ticket: changing.ticket, letter: changing.letter }
    : { kind: 'ticket', id }

/** What was told meanwhile stays in sight beside it. */
const tell = (ordering: Ordering, sent: Sent): Ordering => ({
  ...ordering,
  sent: [...ordering.sent, sent],
})

/** An answer can come twice, where the page was loaded anew before it was put away. */
const arrive = (ordering: Ordering, arrived: Arrived): Ordering => ({
  ...ordering,
  arrived: [...ordering.arrived.filter(({ id }) => id !== arrived.id), arrived],
})

const arrivedOf = (id: string, { drafts, changing }: Order): Arrived => ({
  id,
  sent: sentOf(id, changing),
  items: drafts.flatMap(({ item }) => item ?? []),
})

/** What waited stays until its guest was told, whatever is typed meanwhile. */
export const accepted = (ordering: Ordering, id: string, isLate: boolean): Ordering => {
  if (ordering.sending === id) {
    const next = nextGuest(ordering)
    return isLate
      ? arrive(next, arrivedOf(id, ordering))
      : tell(next, sentOf(id, ordering.changing))
  }
  const parked = ordering.parked.find((one) => one.id === id)
  return parked ? arrive(answered(ordering, id), arrivedOf(id, parked.order)) : ordering
}

export const leftAccepted = (ordering: Ordering, id: string, sent: LeftCommand): Ordering => {
  if (sent.type === 'send')
    return arrive(ordering, {
      id,
      sent: { kind: 'ticket', id },
      items: sent.builds.map(({ item }) => item),
    })
  const { type, ticket, letter } = sent
  return arrive(ordering, {
    id,
    sent: { kind: type === 'change' ? 'changed' : 'cancelled', ticket, letter },
    items: sent.type === 'change' ? [sent.to.item] : [],
  })
}

export const arrivedTold = (ordering: Ordering, id: string): Ordering => ({
  ...ordering,
  arrived: ordering.arrived.filter((one) => one.id !== id),
})

/**
 * With what an earlier load of the page kept. What was answered since stays, and of what was typed
 * since nothing is lost: the half-typed order comes back where there is none.
 */
export const restored = (ordering: Ordering, kept: Ordering): Ordering => {
  const known = new Set(kept.arrived.map(({ id }) => id))
  const arrived = [...kept.arrived, ...ordering.arrived.filter(({ id }) => !known.has(id))]
  const { parked, returned } = ordering
  return isUntouched(ordering) ? { ...kept, arrived, parked, returned } : { ...ordering, arrived }
}

const comeBack = (ordering: Ordering, returned: Returned): Ordering => ({
  ...ordering,
  returned: [...ordering.returned, returned],
})

const returnedOf = (id: string, order: Order, note: Note): Returned =>
  order.changing
    ? { kind: 'change', id, order, note, ...order.changing }
    : { kind: 'order', id, order, note }

export const refused = (ordering: Ordering, id: string, note: Note): Ordering => {
  if (ordering.sending === id) return { ...ordering, sending: null, note }
  const parked = ordering.parked.find((one) => one.id === id)
  if (!parked) return ordering
  return comeBack(answered(ordering, id), returnedOf(id, parked.order, note))
}

/** What an earlier load of the page, or another step, left waiting was refused. */
export const cameBack = (
  ordering: Ordering,
  { id, sent, note }: { readonly id: string; readonly sent: LeftCommand; readonly note: Note },
  state: RunningState,
): Ordering => {
  if (sent.type === 'cancel') {
    const { ticket, letter } = sent
    return comeBack(ordering, { kind: 'cancel', id, note, ticket, letter })
  }
  const draftFor = (choice: BuildChoice) => draftOf(findItem(state.station, choice.item), choice)
  const order: Order =
    sent.type === 'send'
      ? {
          drafts: sent.builds.map(draftFor),
          name: sent.name ?? '',
          paid: sent.paid,
          changing: null,
        }
      : {
          drafts: [draftFor(sent.to)],
          name: '',
          paid: false,
          changing: { ticket: sent.ticket, letter: sent.letter, keeps: null },
        }
  return comeBack(ordering, returnedOf(id, order, note))
}

export const openReturned = (ordering: Ordering, id: string): Ordering => {
  const found = ordering.returned.find((one) => one.id === id)
  if (!found || found.kind === 'cancel') return ordering
  const returned = ordering.returned.filter((one) => one.id !== id)
  return reopen({ ...ordering, returned }, found.order, found.note)
}

/** Leaves the order waiting in sight and serves the next guest. */
export const park = (ordering: Ordering): Ordering =>
  ordering.sending === null
    ? ordering
    : {
        ...nextGuest(ordering),
        parked: [...ordering.parked, { id: ordering.sending, order: orderOf(ordering) }],
      }
