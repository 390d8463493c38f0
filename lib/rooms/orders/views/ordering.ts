/** An order while it is taken: what was said so far, and what would be sent. */

import {
  type Blocked,
  type Draft,
  EMPTY_DRAFT,
  type Settled,
  settle,
} from '#lib/rooms/orders/facts/draft.ts'
import { type NotFree, type Offer, offerFor, offerOf } from '#lib/rooms/orders/facts/offer.ts'
import type { Reading } from '#lib/rooms/orders/facts/statement.ts'
import { readingOf } from '#lib/rooms/orders/views/reading.ts'
import { sumOf, type Wanted, wantedFrom } from '#lib/rooms/pans/facts/behind.ts'
import { type Amounts, takesOf } from '#lib/service/events/build-choice.ts'
import type { NotTaken, Refusal } from '#lib/service/refusal.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
import { findBuild } from '#lib/service/tickets.ts'
import type { Asked, Need } from '#lib/station/codes/codes.ts'

export type Step =
  | 'ask'
  | 'not-sure'
  | 'choose'
  | 'tickets'
  /** The person in charge signs on, or accepts what the build in sight has to be asked for. */
  | 'in-charge'
  /** The screen is turned to the guest: to agree, or only to be shown. */
  | 'turned'
  /** A need was told: whether the ticket's other builds are for the same guest. */
  | 'others'

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

/** What a build that the pans can't fill becomes instead. */
export interface ShortWay {
  /** What the pans can give it of all that they lack for it; 0 is treated as gone. */
  readonly keeps: Amounts
  /** Parts with fewer portions than it has, 1 or more. */
  readonly fewer: Readonly<Record<string, number>>
  /** Parts that it goes without. */
  readonly without: readonly string[]
  /** The base or the item that it gets in place of its own; null for its own. */
  readonly base: string | null
  readonly item: string | null
}

/** The build that is changed, and what of its own the pans can't give it; null for a plain change. */
export interface Changing extends BuildAt {
  readonly keeps: Amounts | null
}

/** What a guest told after sending. */
export interface Told {
  readonly asked: Exclude<Asked, 'none'>
  readonly needs: readonly Need[]
}

/** What was accepted: tickets by the id of their command. */
export type Sent =
  | { readonly kind: 'ticket'; readonly id: string }
  | ({ readonly kind: 'changed' | 'cancelled' } & BuildAt)

/** What waited to be sent and was accepted since, until somebody has told its guest. */
export interface Arrived {
  /** Of its command. */
  readonly id: string
  readonly sent: Sent
  /** Its items, one for each build; none where it was a cancel. */
  readonly items: readonly string[]
}

export interface Order {
  readonly drafts: readonly Draft[]
  readonly name: string
  readonly paid: boolean
  /** The accepted build that this order changes. */
  readonly changing: Changing | null
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
  /** Where a step that covers the order goes back to. */
  readonly from: 'ask' | 'choose'
  /** The accepted build of which a need is told late, while that is asked. */
  readonly telling: BuildAt | null
  /** What was told, and the letters of the ticket's builds that it may hold for as well. */
  readonly others: { readonly told: Told; readonly letters: readonly string[] } | null
  /** Id of the command that waits for its answer. */
  readonly sending: string | null
  readonly note: Note | null
  readonly sent: readonly Sent[]
  /** The oldest first. */
  readonly arrived: readonly Arrived[]
  /** Orders that wait to be sent while the next guest is served. */
  readonly parked: readonly { readonly id: string; readonly order: Order }[]
  readonly returned: readonly Returned[]
}

export const IDLE: Ordering = {
  step: 'ask',
  drafts: [EMPTY_DRAFT],
  current: 0,
  from: 'ask',
  telling: null,
  others: null,
  name: '',
  paid: false,
  changing: null,
  sending: null,
  note: null,
  sent: [],
  arrived: [],
  parked: [],
  returned: [],
}

export interface SettledDraft {
  readonly offer: Offer
  /** With the guest's agreement, while that is to what stands there. */
  readonly settled: Settled | null
  /** What stands there to be read back; null where nothing is chosen. */
  readonly reading: Reading | null
}

interface Known {
  readonly state: RunningState
  readonly changing: Order['changing']
  readonly all: readonly SettledDraft[]
}

/** An accepted build with what is its own; what the pans can't give it isn't. */
const beforeChange = (
  state: RunningState,
  { ticket, letter, keeps }: Changing,
): Pick<Build, 'choice' | 'takes'> | undefined => {
  const build = findBuild(state, ticket, letter)
  return build && keeps !== null
    ? { choice: build.choice, takes: { ...build.takes, ...keeps } }
    : build
}

/** A screen asks for the same order many times while it draws. */
const newest = new WeakMap<Order['drafts'], Known>()

/**
 * Every build of the order as it can be made now; an earlier one goes before a later one. `state` is
 * as an order of so many builds finds it that is sent now.
 */
export const settleAll = (order: Order, state: RunningState): readonly SettledDraft[] => {
  const { drafts, changing } = order
  const known = newest.get(drafts)
  if (known?.state === state && known.changing === changing) return known.all
  let elsewhere: Wanted = { line: {}, behind: {} }
  const before = changing ? beforeChange(state, changing) : undefined
  const all = drafts.map((draft) => {
    const offer = offerOf(offerFor(state, draft.needs, elsewhere, before), draft.item)
    const settled = settle(offer, draft)
    if (settled && drafts.length > 1) {
      const takes = takesOf(settled.choice, state.portions)
      const { line, behind } = wantedFrom(state, settled.choice, takes)
      elsewhere = { line: sumOf(elsewhere.line, line), behind: sumOf(elsewhere.behind, behind) }
    }
    if (!settled) return { offer, settled, reading: null }
    const reading = readingOf(offer, settled)
    const choice = { ...settled.choice, agreed: draft.agreed === reading.key }
    return { offer, settled: { ...settled, choice }, reading }
  })
  newest.set(drafts, { state, changing, all })
  return all
}

/**
 * The first build that isn't as it was read back, since the pans changed: the current one, too,
 * unless it can't be made at all, which is said in its place. null for none, and while it is sent.
 */
export const toSayAgain = (ordering: Ordering, all: readonly SettledDraft[]): number | null => {
  if (ordering.sending !== null) return null
  const index = ordering.drafts.findIndex((draft, at) => {
    const { settled, reading } = all[at] ?? {}
    if (!settled || !reading) return false
    if (settled.blocked !== null) return at !== ordering.current
    return draft.said?.key !== reading.key
  })
  return index === -1 ? null : index
}

/** The build in sight with a change; a note about it is over by then. */
export const withDraft = (ordering: Ordering, change: Partial<Draft>): Ordering => ({
  ...ordering,
  note: null,
  drafts: ordering.drafts.map((draft, index) =>
    index === ordering.current ? { ...draft, ...change } : draft,
  ),
})
