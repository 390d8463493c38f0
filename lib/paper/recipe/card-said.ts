/** What labels declare of what a recipe card is made of: the line says nothing of a card. */
import { type SaidOf, saidOf } from '#lib/paper/allergens/said-of.ts'
import type { CardBox } from '#lib/recipes/card.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** Ids of all ingredients of a card and of the recipes in it, each once; of a circle each card once. */
export const ingredientsOfCard = ({ cards }: CardBox, id: string): readonly string[] => {
  const seen = new Set<string>()
  const found = new Set<string>()
  const walk = (card: string): void => {
    if (seen.has(card)) return
    seen.add(card)
    for (const line of cards.get(card)?.lines ?? []) {
      if (line.isRecipe) walk(line.of)
      else found.add(line.of)
    }
  }
  walk(id)
  return [...found]
}

const OF_CARD = 'card-on-paper'

/**
 * By the labels of a station's document; an ingredient that it doesn't list is as unread. What touches
 * it is left away: that is of a line, and a card may be made anywhere.
 */
export const saidOfMade = (station: StationDocument, ingredients: readonly string[]): SaidOf => {
  const [any] = station.components
  if (any === undefined) throw new RangeError('a station has a component')
  const made = { ...any, id: OF_CARD, ingredients: [...ingredients], recipes: [] }
  return saidOf(
    {
      station: { ...station, components: [...station.components, made], contacts: [] },
      soiled: [],
      lent: [],
      ready: [],
    },
    OF_CARD,
  )
}
