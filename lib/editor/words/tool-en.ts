/** Tools, foods of the table and amounts, as the set-up says them in English. */

import { type Row, textIn } from '#lib/editor/draft.ts'
import { type ScoopHandle, scoopHandle } from '#lib/measure/scoops.ts'
import type { FoodWeight } from '#lib/recipes/food-weights.ts'
import type { NotWanted } from '#lib/recipes/wanted.ts'
import { quantityEn } from '#lib/words/quantity-en.ts'
import { typedProblem } from '#lib/words/recipe/typed-problems-en.ts'

export interface SaidSize {
  readonly label: string
  /** As it is stamped. */
  readonly short: string
  /** Custom property of its handle's colour; null where it has none. */
  readonly token: ScoopHandle['token'] | null
}

const FRACTIONS: Readonly<Record<number, string>> = {
  0.125: '1/8',
  0.25: '1/4',
  0.3333: '1/3',
  0.5: '1/2',
  0.6667: '2/3',
  0.75: '3/4',
}

const numeral = (value: number): string => {
  const whole = Math.floor(value)
  const rest = FRACTIONS[Number((value - whole).toFixed(4))]
  if (rest === undefined) return String(value)
  return whole === 0 ? rest : `${whole} ${rest}`
}

const toolSize = (tool: string, size: Row): SaidSize => {
  if (typeof size.number === 'number') {
    const handle = scoopHandle(size.number)
    const said = quantityEn.scoop(size.number, handle?.colour ?? null)
    return { label: said, short: `#${size.number}`, token: handle?.token ?? null }
  }
  if (tool === 'measure' && typeof size.size === 'number') {
    const unit = { cup: 'cup', tbsp: 'Tbsp', tsp: 'tsp' }[textIn(size, 'unit')] ?? ''
    const said = `${numeral(size.size)} ${unit}`
    return { label: said, short: said, token: null }
  }
  const said = typeof size.flOz === 'number' ? `${numeral(size.flOz)} fl oz` : ''
  return { label: said, short: said, token: null }
}

const FOODS: Readonly<Record<string, string>> = {
  'egg-raw': 'egg, raw',
  'egg-scrambled': 'egg, scrambled',
  'egg-hard-boiled-chopped': 'egg, hard-boiled, chopped',
  'rice-white-cooked': 'white rice, cooked',
  'rice-brown-cooked': 'brown rice, cooked',
}

const foodName = (id: string): string => FOODS[id] ?? id.replace(/-/, ', ').replaceAll('-', ' ')

/** On a card, where an amount may be to taste; all else is said as wherever an amount is typed. */
const OF_A_CARD: Readonly<Partial<Record<NotWanted['code'], string>>> = {
  empty: 'Type how much, as on the card.',
  'no-number': 'Begin with a number, or type “to taste”.',
  zero: 'None of it is no amount.',
}

export const menuToolEn = {
  toolSize,
  foodName,
  foodSource: ({ id, ndb }: FoodWeight) => `USDA SR28, NDB ${ndb}, ${foodName(id)}`,
  amountProblem: (not: { readonly code: NotWanted['code']; readonly at: string }) =>
    OF_A_CARD[not.code] ?? typedProblem(not),
} as const
