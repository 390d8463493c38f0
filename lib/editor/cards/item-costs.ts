/** What the food of an item costs, and what leaving a component out or adding a portion does to it. */
import { cardOf } from '#lib/editor/cards/card-box.ts'
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
import { costOfBought, costOfPortion } from '#lib/recipes/card-cost.ts'
import { minus, plus, type Rational, ratio, ZERO } from '#lib/recipes/rational.ts'

export interface ItemCost {
  readonly item: string
  readonly name: string
  readonly priceCents: number
  /** As it comes: what is known of it. */
  readonly cents: Rational
  /** Names of components whose cost nobody knows: then it costs at least that. */
  readonly unknown: readonly string[]
  readonly without: Rational
  readonly extra: Rational
  readonly extraPriceCents: number
}

const only = (ids: readonly string[]): string | null => (ids.length === 1 ? (ids[0] ?? null) : null)

/**
 * Exact cents of one portion: by its recipe's card, by what it is bought as, or as the station said.
 * null where nobody knows.
 */
const portionCents = (draft: Draft, box: CardBox, served: ServedAs): Rational | null => {
  const row = rowOf(draft, 'component', served.component)
  const [recipe, ingredient] = [only(textsIn(row, 'recipes')), only(textsIn(row, 'ingredients'))]
  const { portion, density, costCents } = served
  const card = recipe === null || ingredient !== null ? null : cardOf(draft, recipe)
  if (portion !== null && card !== null) {
    const cents = costOfPortion(card, box, portion, density)
    if (cents !== null) return cents
  }
  if (portion !== null && ingredient !== null && textsIn(row, 'recipes').length === 0) {
    const cost = costOfBought(portion, density, ingredient, box)
    if (cost.ok) return cost.cents
  }
  return costCents === null ? null : ratio(costCents)
}

/** What is usually taken: the base, and parts in or on the side. */
const usual = (row: Row): readonly string[] => [
  ...(isRecord(row.base) ? [textIn(row.base, 'usual')] : []),
  ...recordsIn(row, 'parts')
    .filter((part) => part.usual === 'in' || part.usual === 'side')
    .map((part) => textIn(part, 'component')),
]

/** Items that usually take a component. */
export const itemCosts = (draft: Draft, box: CardBox, component: string): readonly ItemCost[] => {
  const served = allServed(draft)
  const centsOf = (id: string): Rational | null => {
    const one = served.get(id)
    return one === undefined ? null : portionCents(draft, box, one)
  }
  const own = centsOf(component) ?? ZERO
  return rowsOf(draft, 'item').flatMap(({ id, row }) => {
    const takes = usual(row)
    const priceCents = row.priceCents
    if (!takes.includes(component) || typeof priceCents !== 'number') return []
    const each = takes.map((one) => ({ one, cents: centsOf(one) }))
    const cents = each.reduce((sum, one) => (one.cents ? plus(sum, one.cents) : sum), ZERO)
    const unknown = each
      .filter((one) => one.cents === null)
      .map(({ one }) => served.get(one)?.name ?? one)
    return [
      {
        item: id,
        name: textIn(row, 'name') || id,
        priceCents,
        cents,
        unknown,
        without: minus(cents, own),
        extra: plus(cents, own),
        extraPriceCents: priceCents + (served.get(component)?.extraCents ?? 0),
      },
    ]
  })
}
