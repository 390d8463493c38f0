/** What the food of a plan is made of: its card at the yield that its portions take. */
import { cardBoxOf, type Vessel, vesselOf } from '#lib/editor/cards/card-box.ts'
import { allServed, type ServedAs } from '#lib/editor/cards/served-as.ts'
import { draftOf } from '#lib/editor/draft-of.ts'
import { type Split, splitOf } from '#lib/paper/lists/batches-in.ts'
import type { PrepChoice } from '#lib/prep/food-of.ts'
import type { Amount } from '#lib/recipes/amount.ts'
import type { Card, CardBox, CardLine } from '#lib/recipes/card.ts'
import { type FactorCode, factorForAmount, factorForPortions } from '#lib/recipes/factor.ts'
import { type PortionTotal, portionTotal } from '#lib/recipes/portion-total.ts'
import { dividedBy, fromNumber, type Rational, ratio } from '#lib/recipes/rational.ts'
import { measured, type ScaledLine, scaledCard } from '#lib/recipes/scaled-card.ts'
import type { AmountCode } from '#lib/recipes/typed-parts.ts'
import { typedYield } from '#lib/recipes/typed-yield.ts'
import { loadSize, type Yields } from '#lib/rooms/prep/facts/load-size.ts'
import { findComponent } from '#lib/station/find.ts'
import { loadTotal, portionAmount } from '#lib/station/portion-amount.ts'
import type { Component, StationDocument } from '#lib/station/station-document.ts'

/** Why an amount can't be worked out. */
export type NotReckoned =
  | AmountCode
  | FactorCode
  /** No card says how much of what goes into it. */
  | 'no-card'
  | 'circle'

/** By a card, by the amounts typed at its pan, or the bought thing itself. */
export type MadeBy = 'card' | 'pan' | 'itself'

export interface Made {
  readonly component: Component
  readonly loads: number
  readonly portions: number
  readonly portion: Amount
  /** Portion × portions, exactly. */
  readonly total: Amount
  readonly by: MadeBy
  readonly card: Card
  /** null where the card can't be scaled to them: then nothing of it is reckoned. */
  readonly factor: Rational | null
  readonly why: { readonly code: NotReckoned; readonly at: string } | null
  /** Its lines, scaled; none where there is no factor. */
  readonly lines: readonly ScaledLine[]
  readonly split: Split
}

/** A document's cards and bought things, and how each component is served. */
export interface Cards {
  readonly station: StationDocument
  readonly box: CardBox
  readonly served: ReadonlyMap<string, ServedAs>
  /** By the id of each recipe, what it is made in. */
  readonly vessels: ReadonlyMap<string, Vessel>
  /** What own batches made of the cards. */
  readonly yields: Yields
}

export const cardsOf = (station: StationDocument, yields: Yields = {}): Cards => {
  const draft = draftOf(JSON.parse(JSON.stringify(station)))
  const vessels = station.recipes.flatMap(({ id }) => {
    const vessel = vesselOf(draft, id)
    return vessel === null ? [] : [[id, vessel] as const]
  })
  return {
    ...{ station, yields },
    ...{ box: cardBoxOf(draft), served: allServed(draft), vessels: new Map(vessels) },
  }
}

/**
 * Portions that the house states of what really gives so many: a card that gives less than it states
 * is made more often. Of loads that were corrected they are whole loads again.
 */
const statedPortions = ({ station, yields }: Cards, component: Component, portions: number) => {
  const { ratio: measured } = yields[component.id] ?? { ratio: 1 }
  return component.remake
    ? ratio(portions * loadSize(station, component), loadSize(station, component, yields))
    : dividedBy(ratio(portions), fromNumber(measured))
}

const isCooked = ({ food }: Component): boolean =>
  food.kind !== 'ready' && food.kind !== 'not-cooked'

/** What is typed at a component itself; what it is made of without an amount comes behind. */
const ownCard = (component: Component): Card => {
  const parts = [...component.recipes, ...component.ingredients]
  const typed = component.lines ?? []
  const without = parts.filter((id) => typed.every(({ of }) => of !== id))
  const lines = [...typed, ...without.map((of) => ({ of, typed: '' }))].map(
    (line): CardLine => ({ ...line, isRecipe: component.recipes.includes(line.of) }),
  )
  return { id: component.id, name: component.name, lines, yields: '' }
}

const itself = (line: CardLine, total: Amount, { box, served }: Cards, of: string): ScaledLine => ({
  line,
  name: box.bought.get(line.of)?.name ?? line.of,
  amount: { kind: 'measured', measure: measured(total), also: null },
  buy: null,
  byTaste: null,
  density: served.get(of)?.density ?? null,
})

type Scaling = Pick<Made, 'by' | 'card' | 'factor' | 'why' | 'lines'>

const refused = (by: MadeBy, card: Card, code: NotReckoned, at = ''): Scaling => ({
  ...{ by, card, factor: null, why: { code, at }, lines: [] },
})

const byCard = (cards: Cards, card: Card, { count, total }: PortionTotal, of: string): Scaling => {
  if (card.yields.trim() === '') return refused('card', card, 'no-yield')
  const typed = typedYield(card.yields)
  if (!typed.ok) return refused('card', card, typed.code, typed.at)
  const { yields } = typed
  const found =
    yields.kind === 'portions' && yields.each === null
      ? factorForPortions(yields, count)
      : factorForAmount(yields, total, cards.served.get(of)?.density ?? null)
  if (!found.ok) return refused('card', card, found.code)
  const { factor } = found
  return { by: 'card', card, factor, why: null, lines: scaledCard(card, factor, cards.box) }
}

const scalingOf = (cards: Cards, component: Component, stated: PortionTotal): Scaling => {
  const { recipes, ingredients, id } = component
  const own = ownCard(component)
  const isTyped = (component.lines ?? []).length > 0
  const [recipe] = recipes
  const card = recipe === undefined ? undefined : cards.box.cards.get(recipe)
  if (!isTyped && recipes.length === 1 && ingredients.length === 0 && card)
    return byCard(cards, card, stated, id)
  if (isTyped) {
    const factor = dividedBy(stated.count, ratio(loadSize(cards.station, component)))
    return { by: 'pan', card: own, factor, why: null, lines: scaledCard(own, factor, cards.box) }
  }
  const [only] = own.lines
  return own.lines.length === 1 && only && !only.isRecipe && !isCooked(component)
    ? {
        ...{ by: 'itself', card: own, factor: ratio(1), why: null },
        lines: [itself(only, stated.total, cards, id)],
      }
    : refused('pan', own, 'no-card')
}

/** Into the vessel of its card, and no more than is made at once at most. */
const splitBy = (cards: Cards, component: Component, scaling: Scaling, stated: PortionTotal) => {
  const { remake, id } = component
  const most =
    remake && portionTotal(stated.portion, remake.mostLoads * remake.portionsPerLoad).total
  const vessel = scaling.by === 'card' ? cards.vessels.get(scaling.card.id) : undefined
  return splitOf(stated.total, most, vessel ?? null, cards.served.get(id)?.density ?? null)
}

/** What so many loads of a food take; null where the document doesn't have it. Amounts typed at a pan are for one load. */
export const madeOf = (cards: Cards, choice: PrepChoice): Made | null => {
  const component = findComponent(cards.station, choice.component)
  if (component === undefined) return null
  const { loads, portions } = choice
  const portion = portionAmount(component.portion)
  const { total } = loadTotal(component, portions)
  const stated = portionTotal(portion, statedPortions(cards, component, portions))
  const scaling = scalingOf(cards, component, stated)
  return {
    ...{ component, loads, portions, portion, total },
    ...scaling,
    split: splitBy(cards, component, scaling, stated),
  }
}
