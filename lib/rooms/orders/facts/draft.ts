import { type Finding, RANK } from '#lib/needs/judge.ts'
import { basesToChoose, type SettledBase, settleBase } from '#lib/rooms/orders/facts/base-choice.ts'
import { foodAndCautions } from '#lib/rooms/orders/facts/food-key.ts'
import {
  type NotFree,
  type Offer,
  offerOf,
  type Standing,
  standingOf,
  toAcceptOf,
} from '#lib/rooms/orders/facts/offer.ts'
import type { Reading } from '#lib/rooms/orders/facts/statement.ts'
import {
  type Because,
  type BuildChoice,
  MOST_PORTIONS,
  type Placement,
  priceOf,
  takenComponents,
} from '#lib/service/events/build-choice.ts'
import type { Asked, Need, NeedCode } from '#lib/station/codes/codes.ts'
import { findItem } from '#lib/station/find.ts'
import type { Item, Part } from '#lib/station/station-document.ts'

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
  /** Needs of which the guest said, when asked, that they are left out only; none where left away. */
  readonly asSaid?: readonly NeedCode[]
  readonly item: string | null
  /** The base the guest asked for; null: the usual one. */
  readonly base: string | null
  readonly wishes: Readonly<Record<string, Wish>>
  /** What was read back; null: nothing was. It is sent only while what stands there is the same. */
  readonly said: Reading | null
  /** Key of the reading that the guest agreed to on the turned screen. */
  readonly agreed: string | null
  /** The acceptance of its cautions, and the food that it was for. */
  readonly accepted: { readonly caution: number; readonly food: string } | null
}

export const EMPTY_DRAFT: Draft = {
  asked: null,
  needs: [],
  item: null,
  base: null,
  wishes: {},
  said: null,
  agreed: null,
  accepted: null,
}

export interface SettledPart extends Wish {
  readonly part: Part
  readonly because: Because
  readonly standing: Standing
  /** What the guest wants or the item usually has. */
  readonly wanted: Wish
  /** The need that it is left out for: it rules it out, or nobody has accepted its caution. */
  readonly leftFor: Finding | null
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
  /** Bases among which the guest has to choose before it can be sent. */
  readonly toChoose: readonly string[]
  /** Cautions of what is taken, worst first: the person in charge accepts them with the guest. */
  readonly toAccept: readonly Finding[]
  /** What is taken from its protected back-up pan. */
  readonly fromBackup: readonly string[]
  readonly priceCents: number
  readonly blocked: Blocked | null
}

export const isKept = (item: Item, part: Part): boolean =>
  part.required || part.component === item.heart

const usualWish = (part: Part): Wish => ({
  placement: part.usual,
  portions: part.usual === 'no' ? 0 : 1,
})

const settlePart = (offer: Offer, draft: Draft, item: Item, part: Part): SettledPart => {
  const standing = standingOf(offer, part.component)
  const wish = draft.wishes[part.component]
  const wanted = wish ?? usualWish(part)
  const found = { part, standing, wanted, leftFor: null }
  const none = { ...found, placement: 'no', portions: 0 } as const
  if (standing.kind === 'need') return { ...none, because: 'need', leftFor: standing.finding }
  if (standing.kind === 'unchecked') return { ...none, because: 'need' }
  if (standing.kind !== 'free')
    return { ...none, because: wanted.placement === 'no' ? 'asked' : 'gone' }
  const [caution] = standing.toAccept
  // What needn't be in it is left out before anyone is asked to accept it; a tap asks for it.
  if (caution && wish === undefined && wanted.placement !== 'no' && !isKept(item, part))
    return { ...none, because: 'need', leftFor: caution }
  return {
    ...found,
    placement: wanted.placement,
    portions: Math.min(wanted.portions, standing.left),
    because: 'asked',
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
  if (!base || base.component === null) return null
  const standing = standingOf(offer, base.component)
  return standing.kind === 'free' ? null : { component: base.component, standing }
}

/** The acceptance that a draft holds, while it is for this food and covers what there is. */
const cautionOf = (
  offer: Offer,
  draft: Draft,
  food: string,
  toAccept: readonly Finding[],
): number | null => {
  if (draft.accepted === null || toAccept.length === 0 || draft.accepted.food !== food) return null
  const acceptance = offer.state.cautions[`c${draft.accepted.caution}`]
  return acceptance?.build === null ? draft.accepted.caution : null
}

/**
 * What a draft comes to now: a part that is gone, not sold or ruled out is `no` with its reason, a
 * base that can't be had gives way to another of the item's. null where no known item is chosen.
 */
export const settle = (given: Offer, draft: Draft): Settled | null => {
  const offer = offerOf(given, draft.item)
  const { station } = offer.state
  const item = draft.item === null ? undefined : findItem(station, draft.item)
  if (!item) return null
  const parts = item.parts.map((part) => settlePart(offer, draft, item, part))
  const base = settleBase(offer, draft.base, item)
  const food: BuildChoice = {
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
    agreed: false,
    caution: null,
  }
  const taken = takenComponents(food).map((id) => ({ id, standing: standingOf(offer, id) }))
  const toAccept = taken
    .flatMap(({ standing }) => toAcceptOf(standing))
    .sort((one, other) => RANK[one.level] - RANK[other.level])
  const fromBackup = taken.flatMap(({ id, standing }) =>
    standing.kind === 'free' && standing.fromBackup ? [id] : [],
  )
  const foodText = foodAndCautions(food, toAccept)
  const caution = cautionOf(offer, draft, foodText, toAccept)
  return {
    item,
    choice: { ...food, caution },
    base,
    parts,
    toChoose: basesToChoose(offer, item, base),
    toAccept,
    fromBackup,
    priceCents: priceOf(station, item, food),
    blocked: blockedBy(offer, item, base, parts),
  }
}

/** What an acceptance is for: the food and its cautions, whatever was agreed since. */
export const foodOfSettled = ({ choice, toAccept }: Settled): string =>
  foodAndCautions(choice, toAccept)

/** Whether one more portion can be had: it is taken, under the most, and there is one. */
export const canAdd = ({ placement, portions, standing }: SettledPart): boolean =>
  placement !== 'no' &&
  standing.kind === 'free' &&
  portions < Math.min(MOST_PORTIONS, standing.left)

/**
 * A draft that says what a choice said: for a build that is changed or an order that came back.
 * What is as usual follows the pans and the needs, unless it was taken under an accepted caution.
 */
export const draftOf = (item: Item | undefined, choice: BuildChoice): Draft => {
  const isUsual = (id: string, { placement, portions }: Wish) => {
    const part = item?.parts.find((one) => one.component === id)
    return part?.usual === placement && portions <= 1
  }
  return {
    ...EMPTY_DRAFT,
    asked: choice.asked,
    needs: choice.needs,
    item: choice.item,
    base: choice.base === item?.base?.usual ? null : choice.base,
    wishes: Object.fromEntries(
      Object.entries(choice.parts)
        .filter(([, part]) => part.because === 'asked')
        .filter(([id, part]) => choice.caution !== null || !isUsual(id, part))
        .map(([id, { placement, portions }]) => [id, { placement, portions }]),
    ),
  }
}
