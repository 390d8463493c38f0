import type { Finding } from '#lib/needs/judge.ts'
import {
  type Blocked,
  canAdd,
  type Draft,
  EMPTY_DRAFT,
  isKept,
  type Settled,
  type SettledPart,
  settle,
} from '#lib/rooms/orders/facts/draft.ts'
import {
  type NotFree,
  type Offer,
  offerOf,
  type Standing,
  standingOf,
  toAcceptOf,
} from '#lib/rooms/orders/facts/offer.ts'
import { itemLeft } from '#lib/rooms/pans/facts/levels.ts'
import type { ServiceState } from '#lib/service/state.ts'
import { componentOf, pansOf } from '#lib/station/find.ts'
import type { Item, Pan } from '#lib/station/station-document.ts'

/** How an item stands over one pan of the line. */
export type CellMark =
  | 'in'
  | 'side'
  /** Taken, but the person in charge has to accept its caution with the guest. */
  | 'ask'
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
  /** Bases that fit equally, where the guest has to choose one. */
  readonly bases: readonly string[]
  /** What has to be accepted for what can't be left out; null where nothing has to be. */
  readonly asks: Finding | null
  /** The base that stands in for the usual one; null where it needn't. */
  readonly insteadBase: string | null
}

const taken = (placement: 'in' | 'side', standing: Standing): CellMark =>
  toAcceptOf(standing).length > 0 ? 'ask' : placement

const baseMark = (standing: Standing, isTaken: boolean): CellMark => {
  if (standing.kind === 'free') return isTaken ? taken('in', standing) : 'could'
  return standing.kind === 'need' || standing.kind === 'unchecked' ? 'need' : 'gone'
}

const markOn = (offer: Offer, settled: Settled, pan: Pan): CellMark => {
  const { item, base, parts } = settled
  const standing = standingOf(offer, pan.component)
  if (item.base?.choices.includes(pan.component))
    return baseMark(standing, base?.component === pan.component)
  const found = parts.find(({ part }) => part.component === pan.component)
  if (!found) return 'none'
  if (found.placement !== 'no') return taken(found.placement, standing)
  if (found.part.usual === 'no' && found.wanted.placement === 'no')
    return standing.kind === 'free' ? 'could' : 'none'
  return found.because === 'asked' ? 'no' : found.because
}

/** An accepted build's own item counts as one, though it isn't sold any more. */
const leftOf = (offer: Offer, item: string): number => {
  const keeps = Object.fromEntries(
    Object.entries(offer.kept).map(([component, { keep }]) => [component, keep]),
  )
  const { remaining } = itemLeft({ ...offer.state, keeps }, offer.levels, item)
  return Math.max(remaining, item === offer.ownItem ? 1 : 0)
}

/** The menu as a grid over the line, for this guest and with what is left. */
export const itemRows = (offer: Offer, draft: Draft): readonly ItemRow[] =>
  offer.state.station.items.flatMap((item) => {
    const chosen = draft.item === item.id
    const settled = settle(offer, chosen ? draft : { ...EMPTY_DRAFT, item: item.id })
    if (!settled) return []
    const { blocked, parts, base, toAccept, toChoose } = settled
    return [
      {
        item,
        chosen,
        marks: pansOf(offer.state.station).map((pan) =>
          markOn(offerOf(offer, item.id), settled, pan),
        ),
        left: blocked ? 0 : leftOf(offer, item.id),
        blocked,
        without: parts
          .filter(({ part, because }) => part.usual !== 'no' && because !== 'asked')
          .map(({ part }) => part.component),
        insteadBase: base?.because === 'instead' ? base.component : null,
        bases: toChoose,
        asks: toAccept[0] ?? null,
      },
    ]
  })

/** What a pan says while an item is chosen, and what a tap on it does. */
export type PanFace =
  /** Not of this item, or no item is chosen. */
  | { readonly kind: 'idle' }
  | {
      readonly kind: 'in' | 'side'
      readonly portions: number
      /** What one more portion costs in cents; null where none can be had, or it has a caution. */
      readonly more: number | null
      /** What has to be accepted for it; null for nothing. */
      readonly asks: Finding | null
    }
  | { readonly kind: 'no' }
  | { readonly kind: 'could' | 'base' | 'other-base'; readonly asks: Finding | null }
  /** Left out for a caution; a tap asks for it. */
  | { readonly kind: 'left-out'; readonly finding: Finding }
  | { readonly kind: 'cannot'; readonly standing: NotFree }

const freeFace = (
  offer: Offer,
  settled: Settled,
  part: SettledPart | undefined,
  component: string,
): PanFace => {
  const asks = toAcceptOf(standingOf(offer, component))[0] ?? null
  if (!part) return { kind: settled.base?.component === component ? 'base' : 'other-base', asks }
  if (part.leftFor !== null) return { kind: 'left-out', finding: part.leftFor }
  if (part.placement === 'no')
    return part.part.usual === 'no' && part.wanted.placement === 'no'
      ? { kind: 'could', asks }
      : { kind: 'no' }
  const more =
    canAdd(part) && asks === null ? componentOf(offer.state.station, component).extraCents : null
  return { kind: part.placement, portions: part.portions, more, asks }
}

export const panFace = (offer: Offer, settled: Settled | null, pan: Pan): PanFace => {
  const { component } = pan
  const standing = standingOf(offer, component)
  const part = settled?.parts.find((one) => one.part.component === component)
  const isBase = settled?.item.base?.choices.includes(component) ?? false
  if (!settled || (!part && !isBase))
    return standing.kind === 'gone' || standing.kind === 'not-selling' || standing.kind === 'kept'
      ? { kind: 'cannot', standing }
      : { kind: 'idle' }
  return standing.kind === 'free'
    ? freeFace(offer, settled, part, component)
    : { kind: 'cannot', standing }
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
