/** A card at another yield, line by line. */
import { type Amount, type Density, scaled } from '#lib/recipes/amount.ts'
import { type ByTaste, byTaste, isFarFromCard } from '#lib/recipes/by-itself.ts'
import type { Card, CardBox, CardLine } from '#lib/recipes/card.ts'
import { densityOfCard } from '#lib/recipes/density.ts'
import {
  isRough,
  type KitchenMeasure,
  kitchenMeasure,
  offBy,
} from '#lib/recipes/kitchen-measures.ts'
import { asPurchased } from '#lib/recipes/purchased.ts'
import type { Rational } from '#lib/recipes/rational.ts'
import { typedAmount } from '#lib/recipes/typed-amount.ts'
import type { AmountCode } from '#lib/recipes/typed-parts.ts'

export interface Measure {
  readonly exact: Amount
  readonly shown: KitchenMeasure
  /** 0.02: what is measured out is 2 percent more than the exact amount. */
  readonly offBy: number
}

export interface ScaledLine {
  readonly line: CardLine
  readonly name: string
  readonly amount:
    | { readonly kind: 'measured'; readonly measure: Measure; readonly also: Measure | null }
    | { readonly kind: 'to-taste' }
    | { readonly kind: 'not-understood'; readonly code: AmountCode; readonly at: string }
  /** What is bought of it; null where all of it is eaten, or nobody said. */
  readonly buy: Measure | null
  /** Goes up less than the rest, or by taste; told where the card is far from as it stands. */
  readonly byTaste: ByTaste | null
  readonly density: Density | null
}

export const measured = (exact: Amount, system: 'us' | 'metric' | null = null): Measure => {
  const shown = kitchenMeasure(exact, system)
  return { exact, shown, offBy: offBy(exact, shown) }
}

const scaledLine = (line: CardLine, factor: Rational, box: CardBox): ScaledLine => {
  const card = line.isRecipe ? box.cards.get(line.of) : undefined
  const bought = line.isRecipe ? undefined : box.bought.get(line.of)
  const name = card?.name ?? bought?.name ?? line.of
  const typed = typedAmount(line.typed)
  const none = { line, name, buy: null, density: null }
  if (!typed.ok)
    return {
      ...none,
      amount: { kind: 'not-understood', code: typed.code, at: typed.at },
      byTaste: null,
    }
  if (typed.amount === null) return { ...none, amount: { kind: 'to-taste' }, byTaste: 'to-taste' }
  const amount = scaled(typed.amount, factor)
  const percent = bought?.ediblePercent ?? 100
  const far = isFarFromCard(factor)
  return {
    ...none,
    amount: {
      kind: 'measured',
      measure: measured(amount),
      also: typed.also === null ? null : measured(scaled(typed.also, factor)),
    },
    buy: percent === 100 ? null : measured(asPurchased(amount, percent)),
    byTaste: isRough(typed.amount) ? 'rough' : far ? byTaste(name) : null,
    density: densityOfCard(typed.amount, typed.also),
  }
}

/** All lines of a card, times a factor above 0; nothing typed is lost where it isn't understood. */
export const scaledCard = (card: Card, factor: Rational, box: CardBox): readonly ScaledLine[] =>
  card.lines.map((line) => scaledLine(line, factor, box))
