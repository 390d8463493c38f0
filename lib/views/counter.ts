import { componentOf, pansOf } from '#lib/menu/find.ts'
import type { Item, Pan } from '#lib/menu/station-document.ts'
import type { RunningState, ServiceState } from '#lib/service/state.ts'
import { openBuilds, type QueuedBuild } from '#lib/service/tickets.ts'
import { itemLeft } from '#lib/stock/levels.ts'
import {
  type Blocked,
  canAdd,
  type Draft,
  EMPTY_DRAFT,
  isKept,
  type Settled,
  settle,
} from '#lib/views/draft.ts'
import { shownNameKey } from '#lib/views/name-shown.ts'
import { type NotFree, type Offer, standingOf } from '#lib/views/offer.ts'

/** How an item stands over one pan of the line. */
export type CellMark =
  | 'in'
  | 'side'
  /** The guest said no. */
  | 'no'
  /** Usual, but a need rules it out. */
  | 'need'
  /** Usual, but there is none or it isn't sold. */
  | 'gone'
  /** Another base, or something that can be added. */
  | 'could'
  | 'none'

export interface ItemRow {
  readonly item: Item
  readonly chosen: boolean
  /** One for each pan, left to right. */
  readonly marks: readonly CellMark[]
  /** How many this guest could have, 0 or more. */
  readonly left: number
  readonly blocked: Blocked | null
  /** Usual components it comes without, by no wish of the guest. */
  readonly without: readonly string[]
  /** The base that stands in for the usual one; null where it needn't. */
  readonly insteadBase: string | null
}

const markOn = (offer: Offer, settled: Settled, pan: Pan): CellMark => {
  const { item, base, parts } = settled
  const standing = standingOf(offer, pan.component)
  if (item.base?.choices.includes(pan.component)) {
    if (standing.kind === 'free') return base?.component === pan.component ? 'in' : 'could'
    return standing.kind === 'need' ? 'need' : 'gone'
  }
  const found = parts.find(({ part }) => part.component === pan.component)
  if (!found) return 'none'
  if (found.placement !== 'no') return found.placement
  if (found.part.usual === 'no' && found.wanted.placement === 'no')
    return standing.kind === 'free' ? 'could' : 'none'
  if (found.because === 'asked') return 'no'
  return found.because
}

/** An accepted build's own item counts as one, though it isn't sold any more. */
const leftOf = (offer: Offer, item: string): number =>
  Math.max(itemLeft(offer.state, offer.levels, item).remaining, item === offer.ownItem ? 1 : 0)

/** The menu as a grid over the line, for this guest and with what is left. */
export const itemRows = (offer: Offer, draft: Draft): readonly ItemRow[] =>
  offer.state.station.items.flatMap((item) => {
    const chosen = draft.item === item.id
    const settled = settle(offer, chosen ? draft : { ...EMPTY_DRAFT, item: item.id })
    if (!settled) return []
    const { blocked, parts, base } = settled
    return [
      {
        item,
        chosen,
        marks: pansOf(offer.state.station).map((pan) => markOn(offer, settled, pan)),
        left: blocked ? 0 : leftOf(offer, item.id),
        blocked,
        without: parts
          .filter(({ part, because }) => part.usual !== 'no' && because !== 'asked')
          .map(({ part }) => part.component),
        insteadBase: base?.because === 'instead' ? base.component : null,
      },
    ]
  })

/** What a pan says while an item is chosen, and what a tap on it does. */
export type PanFace =
  /** Not of this item, or no item is chosen. */
  | { readonly kind: 'idle' }
  /** `more`: what one more portion costs in cents; null where none can be had. */
  | { readonly kind: 'in' | 'side'; readonly portions: number; readonly more: number | null }
  | { readonly kind: 'no' }
  | { readonly kind: 'could' }
  | { readonly kind: 'base' }
  | { readonly kind: 'other-base' }
  | { readonly kind: 'cannot'; readonly standing: NotFree }

export const panFace = (offer: Offer, settled: Settled | null, pan: Pan): PanFace => {
  const { component } = pan
  const standing = standingOf(offer, component)
  const part = settled?.parts.find((one) => one.part.component === component)
  const isBase = settled?.item.base?.choices.includes(component) ?? false
  if (!settled || (!part && !isBase))
    return standing.kind === 'gone' || standing.kind === 'not-selling'
      ? { kind: 'cannot', standing }
      : { kind: 'idle' }
  if (part?.placement === 'no' && part.because === 'asked' && part.wanted.placement === 'no') {
    if (standing.kind === 'free') return { kind: part.part.usual === 'no' ? 'could' : 'no' }
    return { kind: 'cannot', standing }
  }
  if (standing.kind !== 'free') return { kind: 'cannot', standing }
  if (!part) return { kind: settled.base?.component === component ? 'base' : 'other-base' }
  if (part.placement === 'no') return { kind: 'no' }
  return {
    kind: part.placement,
    portions: part.portions,
    more: canAdd(part) ? componentOf(offer.state.station, component).extraCents : null,
  }
}

/** Why a pan that the guest can't do without doesn't change. */
export const keepsInItem = (item: Item, component: string): boolean =>
  item.parts.some((part) => part.component === component && isKept(item, part))

/** Number of the ticket that a command sent; null while this screen hasn't been told of it. */
export const ticketSentBy = (state: ServiceState, command: string): number | null => {
  const open = Object.values(state.tickets).find((one) => one.sentBy === command)
  if (open) return open.number
  for (const chunk of Object.values(state.past))
    for (const ticket of Object.values(chunk)) if (ticket.sentBy === command) return ticket.number
  return null
}

export interface OpenTicketBuild extends QueuedBuild {
  readonly canChange: boolean
  readonly canCancel: boolean
  /** The command under which a name is kept; null where no name may be shown. */
  readonly nameKey: string | null
}

/** Open builds, the newest ticket first: the one that a guest comes back about. */
export const ticketsToChange = (state: RunningState): readonly OpenTicketBuild[] =>
  [...openBuilds(state)]
    .sort((one, other) => other.ticket.number - one.ticket.number)
    .map(({ ticket, build }) => ({
      ticket,
      build,
      canChange: build.stop === null && (build.state === 'waiting' || build.state === 'making'),
      canCancel: build.stop === null,
      nameKey: shownNameKey(ticket),
    }))
