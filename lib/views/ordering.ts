/** An order while it is taken: what was said so far, and what would be sent. */
import { type BuildChoice, takesOf } from '#lib/service/build-choice.ts'
import type { Command } from '#lib/service/decide.ts'
import type { NotTaken, Refusal } from '#lib/service/refusal.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findBuild } from '#lib/service/tickets.ts'
import { type Blocked, type Draft, EMPTY_DRAFT, type Settled, settle } from '#lib/views/draft.ts'
import { type NotFree, type Offer, offerFor } from '#lib/views/offer.ts'

export type Step = 'ask' | 'not-sure' | 'choose' | 'tickets'

/** Why a tap did nothing, or an order wasn't taken. */
export type Note =
  | { readonly kind: 'refused'; readonly refusal: Refusal }
  | { readonly kind: 'not-taken'; readonly because: NotTaken }
  | { readonly kind: 'cannot'; readonly component: string; readonly standing: NotFree }
  | { readonly kind: 'item-cannot'; readonly item: string; readonly blocked: Blocked }
  | { readonly kind: 'kept'; readonly item: string; readonly component: string }
  | { readonly kind: 'base'; readonly item: string }
  | { readonly kind: 'not-of-item'; readonly item: string; readonly component: string }

/** What was sent: tickets by the id of their command, a changed build by its name. */
export type Sent =
  | { readonly kind: 'ticket'; readonly id: string }
  | { readonly kind: 'changed'; readonly build: string }

export interface Order {
  readonly drafts: readonly Draft[]
  readonly name: string
  readonly paid: boolean
  /** The accepted build that this order changes. */
  readonly changing: { readonly ticket: number; readonly letter: string } | null
}

/** An order that waited to be sent and was then refused; `note` null where nobody heard why. */
export interface Returned {
  readonly id: string
  readonly order: Order
  readonly note: Note | null
}

export interface Ordering extends Order {
  readonly step: Step
  readonly current: number
  /** Id of the command that waits for its answer. */
  readonly sending: string | null
  readonly note: Note | null
  readonly sent: readonly Sent[]
  /** Orders that wait to be sent while the next guest is served. */
  readonly parked: readonly { readonly id: string; readonly order: Order }[]
  readonly returned: readonly Returned[]
}

export const IDLE: Ordering = {
  step: 'ask',
  drafts: [EMPTY_DRAFT],
  current: 0,
  name: '',
  paid: false,
  changing: null,
  sending: null,
  note: null,
  sent: [],
  parked: [],
  returned: [],
}

export interface SettledDraft {
  readonly offer: Offer
  readonly settled: Settled | null
}

/** Every build of the order as it can be made now; an earlier one goes before a later one. */
export const settleAll = (order: Order, state: RunningState): readonly SettledDraft[] => {
  const elsewhere: Record<string, number> = {}
  const add = (amounts: Readonly<Record<string, number>>, sign: 1 | -1) => {
    for (const [id, amount] of Object.entries(amounts))
      elsewhere[id] = (elsewhere[id] ?? 0) + sign * amount
  }
  const { changing } = order
  const before = changing ? findBuild(state, changing.ticket, changing.letter) : undefined
  if (before) add(before.takes, -1)
  return order.drafts.map((draft) => {
    const offer = offerFor(state, draft.needs, elsewhere)
    const settled = settle(offer, draft)
    if (settled) add(takesOf(settled.choice, state.portions), 1)
    return { offer, settled }
  })
}

const sameChoice = (one: BuildChoice, other: BuildChoice): boolean =>
  JSON.stringify(one) === JSON.stringify(other)

/** The first other build that isn't as it was read back, since the pans changed; null for none. */
export const toSayAgain = (ordering: Ordering, all: readonly SettledDraft[]): number | null => {
  const index = ordering.drafts.findIndex((draft, at) => {
    const settled = all[at]?.settled
    if (at === ordering.current || !settled) return false
    return (
      draft.said === null || settled.blocked !== null || !sameChoice(draft.said, settled.choice)
    )
  })
  return index === -1 ? null : index
}

/** The command that sends the order as it was read back; null while it can't be sent. */
export const commandOf = (ordering: Ordering, state: RunningState): Command | null => {
  const all = settleAll(ordering, state)
  const builds = all.flatMap(({ settled }) =>
    settled && !settled.blocked && settled.choice.asked !== 'not-sure' ? [settled.choice] : [],
  )
  const first = builds[0]
  if (!first || builds.length < ordering.drafts.length || toSayAgain(ordering, all) !== null)
    return null
  if (ordering.changing) return { type: 'change', ...ordering.changing, to: first }
  const name = ordering.name === '' ? {} : { name: ordering.name }
  return { type: 'send', builds, paid: ordering.paid, ...name }
}
