/** What a card costs, with the recipes in it. */
import type { Amount, Density } from '#lib/recipes/amount.ts'
import type { Card, CardBox, CardLine } from '#lib/recipes/card.ts'
import { densityOfCard } from '#lib/recipes/density.ts'
import { factorOfRecipe } from '#lib/recipes/factor.ts'
import {
  asPurchased,
  type Cost,
  type CostCode,
  costOf,
  newestInvoice,
} from '#lib/recipes/purchased.ts'
import { plus, type Rational, times, ZERO } from '#lib/recipes/rational.ts'
import { typedAmount } from '#lib/recipes/typed-amount.ts'

export interface LineCost {
  readonly line: CardLine
  readonly cost: Cost
}

export interface CardCost {
  /** Of one making of the card: what is known of it, exact cents. */
  readonly cents: Rational
  readonly lines: readonly LineCost[]
  /** Lines whose cost isn't known: where there is one, the card costs at least the cents. What is put in to taste isn't counted. */
  readonly unknown: readonly LineCost[]
}

const refused = (code: CostCode): Cost => ({ ok: false, code })

const ofRecipe = (
  amount: Amount,
  id: string,
  box: CardBox,
  within: readonly string[],
  density: Density | null = null,
): Cost => {
  const card = box.cards.get(id)
  if (card === undefined) return refused('no-amount')
  if (within.includes(id)) return refused('circle')
  const made = factorOfRecipe(card.yields, amount, density)
  if (!made.ok) return refused('other-kind')
  const cost = costOfCard(card, box, within)
  const [worst] = cost.unknown
  if (worst && !worst.cost.ok) return refused(worst.cost.code)
  return { ok: true, cents: times(cost.cents, made.factor) }
}

const ofLine = (line: CardLine, box: CardBox, within: readonly string[]): Cost => {
  const typed = typedAmount(line.typed)
  if (!typed.ok) return refused('no-amount')
  if (typed.amount === null) return refused('to-taste')
  const density = densityOfCard(typed.amount, typed.also)
  return line.isRecipe
    ? ofRecipe(typed.amount, line.of, box, within, density)
    : costOfBought(typed.amount, density, line.of, box)
}

/** What so much of a bought thing costs, trimmed as it is. */
export const costOfBought = (
  amount: Amount,
  density: Density | null,
  id: string,
  box: CardBox,
): Cost => {
  const bought = box.bought.get(id)
  if (bought === undefined) return refused('no-invoice')
  const buy = asPurchased(amount, bought.ediblePercent ?? 100)
  return costOf(buy, newestInvoice(bought.invoices), density)
}

/** `within`: cards that this one is part of, so that a circle ends. What isn't known is no 0. */
export const costOfCard = (card: Card, box: CardBox, within: readonly string[] = []): CardCost => {
  const lines = card.lines.map((line) => ({ line, cost: ofLine(line, box, [...within, card.id]) }))
  return {
    cents: lines.reduce((sum, { cost }) => (cost.ok ? plus(sum, cost.cents) : sum), ZERO),
    lines,
    unknown: lines.filter(({ cost }) => !cost.ok && cost.code !== 'to-taste'),
  }
}

/** What a portion of what a card makes costs; null where that isn't known in full. */
export const costOfPortion = (
  card: Card,
  box: CardBox,
  portion: Amount,
  density: Density | null = null,
): Rational | null => {
  const cost = ofRecipe(portion, card.id, box, [], density)
  return cost.ok ? cost.cents : null
}
