/** What the food of an item costs as it comes, and what "no", the side and an extra portion do to it. */
import { cardOf, loadPortions, ownCardOf } from '#lib/editor/cards/card-box.ts'
import { allServed, type ServedAs } from '#lib/editor/cards/served-as.ts'
import {
  type Draft,
  isRecord,
  type Row,
  recordsIn,
  rowOf,
  rowsOf,
  textIn,
  textsIn,
} from '#lib/editor/draft.ts'
import type { CardBox } from '#lib/recipes/card.ts'
import { costOfBought, costOfCard, costOfPortion } from '#lib/recipes/card-cost.ts'
import { type Sold, sold } from '#lib/recipes/purchased.ts'
import { dividedBy, minus, plus, type Rational, ratio, ZERO } from '#lib/recipes/rational.ts'

/** A component that an item takes, or that it may be had with. */
export interface PartCost {
  readonly component: string
  readonly name: string
  /** As it usually comes; a base is in it. */
  readonly usual: 'in' | 'side' | 'no'
  readonly isBase: boolean
  /** Of one portion, in the pan's measure or on the side alike; null where nobody knows. */
  readonly cents: Rational | null
  /** The item without it, at the same price; null where it can't be left out, or isn't in it. */
  readonly no: Sold | null
  /**
   * The item with a portion more of it; null of a base. One beyond the first costs the guest more,
   * the first of what only comes if asked doesn't.
   */
  readonly extra: Sold | null
}

export interface ItemCost {
  readonly item: string
  readonly name: string
  readonly asItComes: Sold
  /** Names of components in it whose cost nobody knows: then it costs at least that. */
  readonly unknown: readonly string[]
  readonly parts: readonly PartCost[]
}

const only = (ids: readonly string[]): string | null => (ids.length === 1 ? (ids[0] ?? null) : null)

/** What is cooked weighs other than what was bought, dry rice a third of it. */
const isCooked = (row: Row | undefined): boolean => {
  const kind = isRecord(row?.food) ? row.food.kind : undefined
  return typeof kind === 'string' && kind !== 'ready' && kind !== 'not-cooked'
}

/** By the amounts typed at its pan, which are for one load; null where they don't say all of it. */
const typedCents = (draft: Draft, box: CardBox, { component }: ServedAs): Rational | null => {
  const card = ownCardOf(draft, component)
  const portions = loadPortions(draft, component)
  if (card === null || portions === null) return null
  const cost = costOfCard(card, box)
  return cost.unknown.length === 0 ? dividedBy(cost.cents, ratio(portions)) : null
}

/**
 * Exact cents of one portion: by the amounts typed at its pan, by its recipe's card, by what it is
 * bought as where that is what is eaten, or as the station said. null where nobody knows.
 */
const portionCents = (draft: Draft, box: CardBox, served: ServedAs): Rational | null => {
  const row = rowOf(draft, 'component', served.component)
  const [recipe, ingredient] = [only(textsIn(row, 'recipes')), only(textsIn(row, 'ingredients'))]
  const { portion, density, costCents } = served
  const typed = typedCents(draft, box, served)
  if (typed !== null) return typed
  const card = recipe === null || ingredient !== null ? null : cardOf(draft, recipe)
  if (portion !== null && card !== null) {
    const cents = costOfPortion(card, box, portion, density)
    if (cents !== null) return cents
  }
  const isEaten =
    ingredient !== null &&
    (!isCooked(row) || (box.bought.get(ingredient)?.ediblePercent ?? null) !== null)
  if (portion !== null && isEaten && textsIn(row, 'recipes').length === 0) {
    const cost = costOfBought(portion, density, ingredient, box)
    if (cost.ok) return cost.cents
  }
  return costCents === null ? null : ratio(costCents)
}

const USUAL = ['in', 'side', 'no'] as const

type Taken = Pick<PartCost, 'component' | 'usual' | 'isBase'> & { readonly required: boolean }

/** The usual base, and every part in the item's own order. */
const partsOf = (row: Row): readonly Taken[] => [
  ...(isRecord(row.base) && textIn(row.base, 'usual') !== ''
    ? [
        {
          component: textIn(row.base, 'usual'),
          usual: 'in' as const,
          isBase: true,
          required: true,
        },
      ]
    : []),
  ...recordsIn(row, 'parts').map((part) => ({
    component: textIn(part, 'component'),
    usual: USUAL.find((one) => one === part.usual) ?? ('no' as const),
    isBase: false,
    required: part.required === true || textIn(row, 'heart') === part.component,
  })),
]

/** What one item costs; null while it has no price. */
export const itemCost = (draft: Draft, box: CardBox, id: string): ItemCost | null => {
  const row = rowOf(draft, 'item', id)
  const priceCents = row?.priceCents
  if (row === undefined || typeof priceCents !== 'number') return null
  const served = allServed(draft)
  const each = partsOf(row).map((part) => {
    const one = served.get(part.component)
    return {
      ...part,
      name: one?.name ?? part.component,
      extraCents: one?.extraCents ?? 0,
      cents: one === undefined ? null : portionCents(draft, box, one),
    }
  })
  const taken = each.filter(({ usual }) => usual !== 'no')
  const cents = taken.reduce((sum, one) => (one.cents ? plus(sum, one.cents) : sum), ZERO)
  return {
    item: id,
    name: textIn(row, 'name') || id,
    asItComes: sold(priceCents, cents),
    unknown: taken.filter((one) => one.cents === null).map(({ name }) => name),
    parts: each.map(({ component, name, usual, isBase, required, extraCents, cents: own }) => ({
      component,
      name,
      usual,
      isBase,
      cents: own,
      no: usual === 'no' || required ? null : sold(priceCents, minus(cents, own ?? ZERO)),
      extra: isBase
        ? null
        : sold(priceCents + (usual === 'no' ? 0 : extraCents), plus(cents, own ?? ZERO)),
    })),
  }
}

/** Items that usually take a component, each with what that part of it does. */
export const itemsWith = (
  draft: Draft,
  box: CardBox,
  component: string,
): readonly { readonly cost: ItemCost; readonly part: PartCost }[] =>
  rowsOf(draft, 'item').flatMap(({ id }) => {
    const cost = itemCost(draft, box, id)
    const part = cost?.parts.find((one) => one.component === component && one.usual !== 'no')
    return cost && part ? [{ cost, part }] : []
  })
