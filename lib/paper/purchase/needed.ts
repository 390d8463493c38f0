/** What has to be bought for a plan: its cards added up by ingredient, exactly. */
import { type Cards, type Made, madeOf, type NotReckoned } from '#lib/paper/lists/made-of.ts'
import type { PrepChoice } from '#lib/prep/food-of.ts'
import { type Amount, type Density, together } from '#lib/recipes/amount.ts'
import { factorOfRecipe } from '#lib/recipes/factor.ts'
import { asPurchased } from '#lib/recipes/purchased.ts'
import { type ScaledLine, scaledCard } from '#lib/recipes/scaled-card.ts'

/** As purchased, for one food of the plan. */
export interface Share {
  readonly food: string
  readonly amount: Amount
  /** What joins its weight and its volume; null: nobody said. */
  readonly density: Density | null
}

export interface NeededOf {
  readonly ingredient: string
  readonly name: string
  readonly shares: readonly Share[]
  /** Names of foods that take it to taste. */
  readonly toTaste: readonly string[]
}

/** A line that can't be reckoned, or a food of which nothing can. */
export interface Lacking {
  readonly food: string
  /** The id of what would be bought; null: a recipe, or nothing that is named. */
  readonly ingredient: string | null
  /** What it would be bought as, or the card. */
  readonly name: string
  readonly typed: string
  readonly code: NotReckoned
  readonly at: string
}

export interface Needed {
  readonly of: readonly NeededOf[]
  readonly lacking: readonly Lacking[]
}

interface Sum {
  readonly shares: Map<string, { name: string; shares: Share[]; toTaste: string[] }>
  readonly lacking: Lacking[]
}

const intoRecipe = (
  cards: Cards,
  line: ScaledLine,
  amount: Amount,
  food: string,
  within: readonly string[],
  sum: Sum,
): void => {
  const lack = (code: NotReckoned, at = '') =>
    sum.lacking.push({
      ...{ food, name: line.name, typed: line.line.typed, ingredient: null, code, at },
    })
  const card = cards.box.cards.get(line.line.of)
  if (card === undefined) return void lack('no-card')
  if (within.includes(card.id)) return void lack('circle')
  const found = factorOfRecipe(card.yields, amount, line.density)
  if (!found.ok) return void lack(found.code, found.at)
  addLines(cards, scaledCard(card, found.factor, cards.box), food, [...within, card.id], sum)
}

const addLines = (
  cards: Cards,
  lines: readonly ScaledLine[],
  food: string,
  within: readonly string[],
  sum: Sum,
): void => {
  for (const line of lines) {
    const { amount, name, density } = line
    const { of, isRecipe, typed } = line.line
    if (amount.kind === 'not-understood') {
      sum.lacking.push({
        ...{ food, name, typed, ingredient: isRecipe ? null : of },
        ...{ code: amount.code, at: amount.at },
      })
      continue
    }
    if (isRecipe) {
      if (amount.kind === 'measured')
        intoRecipe(cards, line, amount.measure.exact, food, within, sum)
      else
        sum.lacking.push({
          ...{ food, name, typed, ingredient: null, code: 'no-number', at: typed },
        })
      continue
    }
    const found = sum.shares.get(of) ?? { name, shares: [], toTaste: [] }
    sum.shares.set(of, found)
    if (amount.kind === 'to-taste') found.toTaste.push(food)
    else {
      const percent = cards.box.bought.get(of)?.ediblePercent ?? 100
      found.shares.push({ food, amount: asPurchased(amount.measure.exact, percent), density })
    }
  }
}

const addFood = (cards: Cards, made: Made, sum: Sum): void => {
  const { component, card, why } = made
  if (why === null) {
    addLines(cards, made.lines, component.name, [card.id], sum)
    return
  }
  const food = component.name
  for (const { of, isRecipe, typed } of card.lines) {
    const name = (isRecipe ? cards.box.cards.get(of) : cards.box.bought.get(of))?.name ?? of
    sum.lacking.push({ food, name, typed, ingredient: isRecipe ? null : of, ...why })
  }
  if (card.lines.length === 0)
    sum.lacking.push({ food, name: food, typed: '', ingredient: null, ...why })
}

/** Of all that is chosen of a plan; its loads are taken as they are. Nothing that can't be reckoned is dropped. */
export const neededFor = (cards: Cards, foods: readonly PrepChoice[]): Needed => {
  const sum: Sum = { shares: new Map(), lacking: [] }
  for (const choice of foods) {
    const made = madeOf(cards, choice)
    if (made) addFood(cards, made, sum)
    else
      sum.lacking.push({
        ...{ food: choice.component, name: choice.component, typed: '' },
        ...{ ingredient: null, code: 'no-card', at: '' },
      })
  }
  return {
    of: [...sum.shares].map(([ingredient, { name, shares, toTaste }]) => ({
      ...{ ingredient, name, shares, toTaste: [...new Set(toTaste)] },
    })),
    lacking: sum.lacking,
  }
}

/** Amounts of a kind added, in the order in which they came: weight and volume stay two. */
export const added = (amounts: readonly Amount[]): readonly Amount[] => {
  const sums: Amount[] = []
  for (const amount of amounts) {
    const at = sums.findIndex((one) => together(one, amount) !== null)
    const before = sums[at]
    const sum = before && together(before, amount)
    if (sum) sums[at] = sum
    else sums.push(amount)
  }
  return sums
}
