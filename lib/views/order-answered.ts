/** What becomes of an order once it is sent: answered, parked while it waits, or come back. */
import { findItem } from '#lib/menu/find.ts'
import type { BuildChoice } from '#lib/service/build-choice.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName } from '#lib/service/tickets.ts'
import { type Draft, draftOf } from '#lib/views/draft.ts'
import { IDLE, type Note, type Order, type Ordering } from '#lib/views/ordering.ts'

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
  parked: ordering.parked,
  returned: ordering.returned,
})

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

export const accepted = (ordering: Ordering, id: string): Ordering => {
  const { changing } = ordering
  if (ordering.sending !== id) {
    const parked = ordering.parked.find((one) => one.id === id)
    if (parked?.order.changing) return answered(ordering, id)
    return { ...answered(ordering, id), sent: [...ordering.sent, { kind: 'ticket', id }] }
  }
  return {
    ...nextGuest(ordering),
    sent: [
      changing
        ? { kind: 'changed', build: buildName(changing.ticket, changing.letter) }
        : { kind: 'ticket', id },
    ],
  }
}

export const refused = (ordering: Ordering, id: string, note: Note): Ordering => {
  if (ordering.sending === id) return { ...ordering, sending: null, note }
  const parked = ordering.parked.find((one) => one.id === id)
  if (!parked) return ordering
  const returned = [...ordering.returned, { id, order: parked.order, note }]
  return { ...answered(ordering, id), returned }
}

export const cameBack = (
  ordering: Ordering,
  id: string,
  choices: readonly BuildChoice[],
  state: RunningState,
): Ordering => ({
  ...ordering,
  returned: [
    ...ordering.returned,
    {
      id,
      note: null,
      order: {
        drafts: choices.map((choice) => draftOf(findItem(state.station, choice.item), choice)),
        name: '',
        paid: false,
        changing: null,
      },
    },
  ],
})

export const openReturned = (ordering: Ordering, id: string): Ordering => {
  const found = ordering.returned.find((one) => one.id === id)
  if (!found) return ordering
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
