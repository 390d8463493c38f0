/** Amounts of a recipe in US English, as lib/recipes measures them out. */
import type { AmountPart } from '#lib/measure/amount-parts.ts'
import type { Amount } from '#lib/recipes/amount.ts'
import {
  type CountPart,
  type KitchenMeasure,
  kitchenMeasure,
} from '#lib/recipes/kitchen-measures.ts'
import type { Counted } from '#lib/recipes/units.ts'
import { quantityEn } from '#lib/words/quantity-en.ts'

const COUNTED: Readonly<Record<Counted, { readonly one: string; readonly many: string }>> = {
  piece: { one: 'each', many: 'each' },
  egg: { one: 'egg', many: 'eggs' },
  slice: { one: 'slice', many: 'slices' },
  clove: { one: 'clove', many: 'cloves' },
  head: { one: 'head', many: 'heads' },
  bunch: { one: 'bunch', many: 'bunches' },
  stalk: { one: 'stalk', many: 'stalks' },
  leaf: { one: 'leaf', many: 'leaves' },
  sheet: { one: 'sheet', many: 'sheets' },
  stick: { one: 'stick', many: 'sticks' },
  loaf: { one: 'loaf', many: 'loaves' },
  pack: { one: 'pack', many: 'packs' },
  case: { one: 'case', many: 'cases' },
}

const NUMBER = new Intl.NumberFormat(quantityEn.locale)

const count = ({ whole, fraction }: CountPart): string =>
  [
    ...(whole > 0 || fraction === null ? [NUMBER.format(whole)] : []),
    ...((fraction ?? '') ? [fraction] : []),
  ].join(' ')

const isOne = ({ whole, fraction }: CountPart): boolean =>
  (whole === 1 && fraction === null) || (whole === 0 && fraction !== null)

/** "3 1/4 cups", largest unit first; what is less than the smallest spoon is said so. */
const parts = (all: readonly AmountPart[], kind: Amount['kind']): string =>
  all.length > 0
    ? quantityEn.amount(all)
    : quantityEn.under(kind === 'weight' ? '1/4 oz' : '1/8 tsp')

/** "2 qt 3 1/4 cups", "54 eggs", "2 1/2 #10 cans". */
export const sayMeasure = (shown: KitchenMeasure, kind: Amount['kind']): string => {
  switch (shown.kind) {
    case 'us':
      return parts(shown.parts, kind)
    case 'metric':
      return shown.metric.value > 0
        ? quantityEn.metric(shown.metric)
        : quantityEn.under(quantityEn.metric({ ...shown.metric, value: 0.1 }))
    case 'count':
      return `${count(shown.part)} ${isOne(shown.part) ? COUNTED[shown.of].one : COUNTED[shown.of].many}`
    case 'cans':
      return `${count(shown.part)} #${shown.can} ${isOne(shown.part) ? 'can' : 'cans'}`
  }
}

/** An exact amount, measured out in its own system or another. */
export const sayAmount = (amount: Amount, system: 'us' | 'metric' | null = null): string =>
  sayMeasure(kitchenMeasure(amount, system), amount.kind)

/** As TM 10-412 takes gallons apart, to the 1/4 tsp. */
export const sayTakenApart = (all: readonly AmountPart[]): string => quantityEn.amount(all)
