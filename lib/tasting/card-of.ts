/** The card that a component is made by, as the station's document has it. */
import type { Density } from '#lib/recipes/amount.ts'
import type { Card, CardBox, CardLine } from '#lib/recipes/card.ts'
import { cardText } from '#lib/recipes/measured-yield.ts'
import { dividedBy, fromNumber } from '#lib/recipes/rational.ts'
import { US_ML } from '#lib/recipes/units.ts'
import type { Served } from '#lib/recipes/wanted.ts'
import { findComponent } from '#lib/station/find.ts'
import { portionAmount } from '#lib/station/portion-amount.ts'
import type { Component, StationDocument } from '#lib/station/station-document.ts'

type Recipe = StationDocument['recipes'][number]

/** Lines in the card's order; what it is made of without an amount comes behind them. */
const linesOf = ({ recipes, ingredients, lines = [] }: Recipe): readonly CardLine[] => {
  const parts = [...recipes, ...ingredients]
  const without = parts.filter((id) => lines.every(({ of }) => of !== id))
  return [...lines, ...without.map((of) => ({ of, typed: '' }))]
    .filter(({ of }) => parts.includes(of))
    .map((line) => ({ of: line.of, typed: line.typed, isRecipe: recipes.includes(line.of) }))
}

export const cardBoxIn = (station: StationDocument): CardBox => ({
  cards: new Map(
    station.recipes.map((one) => [
      one.id,
      { id: one.id, name: one.name, yields: one.yields ?? '', lines: linesOf(one) },
    ]),
  ),
  bought: new Map(
    station.ingredients.map(({ id, name, edible, invoices }) => [
      id,
      { name, ediblePercent: edible ?? null, invoices: invoices ?? [] },
    ]),
  ),
})

/** null where it is bought as it is, or made of more than one recipe. */
export const cardFor = (
  station: StationDocument,
  component: string,
): { readonly card: Card; readonly box: CardBox } | null => {
  const found = findComponent(station, component)
  const [recipe] = found?.recipes ?? []
  if (!found || recipe === undefined || found.recipes.length + found.ingredients.length !== 1)
    return null
  const box = cardBoxIn(station)
  const card = box.cards.get(recipe)
  return card ? { card, box } : null
}

/** What the card of each component says, of those that have one: what was measured belongs to that. */
export const cardTexts = (station: StationDocument): Readonly<Record<string, string>> =>
  Object.fromEntries(
    station.components.flatMap(({ id }) => {
      const found = cardFor(station, id)
      return found ? [[id, cardText(found.card, found.box)]] : []
    }),
  )

/** As lib/recipes/density.ts states them. */
const OFF_BY = { measured: 0.02, pan: 0.1, table: 0.1 } as const

const densityOf = ({ density, portion }: Component): Density | null => {
  if (density) {
    const { gPerMl, by } = density
    return { gPerMl: fromNumber(gPerMl), by, offBy: OFF_BY[by] }
  }
  return 'gPerCup' in portion
    ? {
        gPerMl: dividedBy(fromNumber(portion.gPerCup), US_ML.cup),
        by: 'table',
        offBy: OFF_BY.table,
      }
    : null
}

export const servedIn = (station: StationDocument, component: string): Served => {
  const found = findComponent(station, component)
  return found
    ? { portion: portionAmount(found.portion), density: densityOf(found) }
    : { portion: null, density: null }
}
