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

export interface BuildAt {
  readonly ticket: number
  readonly letter: string
}

/** What was accepted: tickets by the id of their command. */
export type Sent =
  | { readonly kind: 'ticket'; readonly id: string }
  | ({ readonly kind: 'changed' | 'cancelled' } & BuildAt)

export interface Order {
  readonly drafts: readonly Draft[]
  readonly name: string
  readonly paid: boolean
  /** The accepted build that this order changes. */
  readonly changing: BuildAt | null
}

/** An order, a change or a cancel that waited to be sent and was then refused. */
export type Returned = { readonly id: string; readonly note: Note } & (
  | { readonly kind: 'order'; readonly order: Order }
  | ({ readonly kind: 'change'; readonly order: Order } & BuildAt)
  | ({ readonly kind: 'cancel' } & BuildAt)
)

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
  const { changing } = order
  const before = changing ? findBuild(state, changing.ticket, changing.letter) : undefined
  return order.drafts.map((draft) => {
    const offer = offerFor(state, draft.needs, elsewhere, before)
    const settled = settle(offer, draft)
    const takes = settled ? takesOf(settled.choice, state.portions) : {}
    for (const [id, amount] of Object.entries(takes)) elsewhere[id] = (elsewhere[id] ?? 0) + amount
    return { offer, settled }
  })
}

const sameChoice = (one: BuildChoice, other: BuildChoice): boolean =>
  JSON.stringify(one) === JSON.stringify(other)

/**
 * The first build that isn't as it was read back, since the pans changed: the current one, too,
 * unless it can't be made at all, which is said in its place. null for none, and while it is sent.
 */
export const toSayAgain = (ordering: Ordering, all: readonly SettledDraft[]): number | null => {
  if (ordering.sending !== null) return null
  const index = ordering.drafts.findIndex((draft, at) => {
    const settled = all[at]?.settled
    if (!settled) return false
    if (settled.blocked !== null) return at !== ordering.current
    return draft.said === null || !sameChoice(draft.said, settled.choice)
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
