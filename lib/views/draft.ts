import { componentOf, findItem } from '#lib/menu/find.ts'
import type { Item, Part } from '#lib/menu/station-document.ts'
import type { Asked, Need } from '#lib/needs/codes.ts'
import {
  type Because,
  type BuildChoice,
  MOST_PORTIONS,
  type Placement,
  priceOf,
} from '#lib/service/build-choice.ts'
import { type NotFree, type Offer, type Standing, standingOf } from '#lib/views/offer.ts'

/** How a guest wants one part; `portions` is 1 to MOST_PORTIONS where it is taken, else 0. */
export interface Wish {
  readonly placement: Placement
  readonly portions: number
}

/** A build while it is being ordered: only what the guest said, so that it follows the pans. */
export interface Draft {
  /** null: not asked yet. */
  readonly asked: Asked | null
  readonly needs: readonly Need[]
  readonly item: string | null
  /** The base the guest asked for; null: the usual one. */
  readonly base: string | null
  readonly wishes: Readonly<Record<string, Wish>>
  /** What stood there to be read back after the student's last tap on it; null while nothing did. */
  readonly said: BuildChoice | null
}

export const EMPTY_DRAFT: Draft = {
  asked: null,
  needs: [],
  item: null,
  base: null,
  wishes: {},
  said: null,
}

export interface SettledPart extends Wish {
  readonly part: Part
  readonly because: Because
  readonly standing: Standing
  /** What the guest wants or the item usually has. */
  readonly wanted: Wish
}

export interface SettledBase {
  readonly component: string
  readonly usual: string
  /** `instead`: neither asked for nor usual, but what there is. */
  readonly because: 'usual' | 'asked' | 'instead'
  /** How the base stands that was wanted. */
  readonly wantedStanding: Standing
  readonly wanted: string
}

/** Why an item can't be sold to this guest now. `component` null: the item itself isn't sold. */
export interface Blocked {
  readonly component: string | null
  readonly standing: NotFree
}

/** A draft as the pans and the guest's needs let it be made now. */
export interface Settled {
  readonly item: Item
  readonly choice: BuildChoice
  readonly base: SettledBase | null
  readonly parts: readonly SettledPart[]
  readonly priceCents: number
  readonly blocked: Blocked | null
}

export const isKept = (item: Item, part: Part): boolean =>
  part.required || part.component === item.heart

const usualWish = (part: Part): Wish => ({
  placement: part.usual,
  portions: part.usual === 'no' ? 0 : 1,
})

const settlePart = (offer: Offer, draft: Draft, part: Part): SettledPart => {
  const standing = standingOf(offer, part.component)
  const wanted = draft.wishes[part.component] ?? usualWish(part)
  const none = { placement: 'no', portions: 0 } as const
  const found = { part, standing, wanted }
  if (standing.kind === 'free')
    return {
      ...found,
      placement: wanted.placement,
      portions: Math.min(wanted.portions, standing.left),
      because: 'asked',
    }
  if (standing.kind === 'need') return { ...found, ...none, because: 'need' }
  return { ...found, ...none, because: wanted.placement === 'no' ? 'asked' : 'gone' }
}

const settleBase = (offer: Offer, draft: Draft, item: Item): SettledBase | null => {
  if (!item.base) return null
  const { choices, usual } = item.base
  const wanted = draft.base ?? usual
  const wantedStanding = standingOf(offer, wanted)
  const other = choices.find((one) => standingOf(offer, one).kind === 'free')
  const instead = wantedStanding.kind !== 'free' && other !== undefined
  return {
    component: instead ? other : wanted,
    usual,
    wanted,
    wantedStanding,
    because: instead ? 'instead' : wanted === usual ? 'usual' : 'asked',
  }
}

const blockedBy = (
  offer: Offer,
  item: Item,
  base: SettledBase | null,
  parts: readonly SettledPart[],
): Blocked | null => {
  if (offer.state.notSelling.item[item.id] !== undefined && item.id !== offer.ownItem)
    return { component: null, standing: { kind: 'not-selling' } }
  const stuck = parts.find(({ part, standing }) => isKept(item, part) && standing.kind !== 'free')
  if (stuck && stuck.standing.kind !== 'free')
    return { component: stuck.part.component, standing: stuck.standing }
  const standing = base ? standingOf(offer, base.component) : null
  return base && standing && standing.kind !== 'free'
    ? { component: base.component, standing }
    : null
}

/**
 * What a draft comes to now: a part that is gone, not sold or ruled out is `no` with its reason, a
 * base that can't be had gives way to another of the item's. null where no known item is chosen.
 */
export const settle = (offer: Offer, draft: Draft): Settled | null => {
  const { station } = offer.state
  const item = draft.item === null ? undefined : findItem(station, draft.item)
  if (!item) return null
  const parts = item.parts.map((part) => settlePart(offer, draft, part))
  const base = settleBase(offer, draft, item)
  const choice: BuildChoice = {
    item: item.id,
    base: base?.component ?? null,
    parts: Object.fromEntries(
      parts.map(({ part, placement, portions, because }) => [
        part.component,
        { placement, portions, because },
      ]),
    ),
    asked: draft.asked ?? 'not-sure',
    needs: draft.needs,
  }
  return {
    item,
    choice,
    base,
    parts,
    priceCents: priceOf(station, item, choice),
    blocked: blockedBy(offer, item, base, parts),
  }
}

/**
 * The order in which taps on a pan go: from the usual placement to no, so that a no is one tap,
 * then to the other one; the side only where cups exist, no only where it can be left out.
 */
export const tapCycle = (item: Item, part: Part, cups: boolean): readonly Placement[] => {
  const cycle: Placement[] =
    part.usual === 'no'
      ? ['no', 'in', 'side']
      : [part.usual, 'no', part.usual === 'in' ? 'side' : 'in']
  return cycle.filter((one) => (one !== 'side' || cups) && (one !== 'no' || !isKept(item, part)))
}

/** The wish after a tap on a part's pan. */
export const tapped = (offer: Offer, item: Item, settled: SettledPart): Wish => {
  const { part } = settled
  const cycle = tapCycle(item, part, componentOf(offer.state.station, part.component).side)
  const next = cycle[(cycle.indexOf(settled.placement) + 1) % cycle.length] ?? settled.placement
  return { placement: next, portions: next === 'no' ? 0 : 1 }
}

/** Whether one more portion can be had: it is taken, under the most, and there is one. */
export const canAdd = ({ placement, portions, standing }: SettledPart): boolean =>
  placement !== 'no' &&
  standing.kind === 'free' &&
  portions < Math.min(MOST_PORTIONS, standing.left)

/** A draft that says what a choice said: for a build that is changed or an order that came back. */
export const draftOf = (item: Item | undefined, choice: BuildChoice): Draft => ({
  asked: choice.asked,
  needs: choice.needs,
  item: choice.item,
  base: choice.base === item?.base?.usual ? null : choice.base,
  wishes: Object.fromEntries(
    Object.entries(choice.parts)
      .filter(([, part]) => part.because === 'asked')
      .map(([id, { placement, portions }]) => [id, { placement, portions }]),
  ),
  said: null,
})
