/** What stands on a purchase list: by where it lies, so much, in so many packs. */
import type { Cards } from '#lib/paper/lists/made-of.ts'
import type { Came } from '#lib/paper/purchase/came-last.ts'
import { added, type Lacking, type NeededOf, neededFor } from '#lib/paper/purchase/needed.ts'
import type { PrepChoice } from '#lib/prep/food-of.ts'
import { type Amount, timesIn } from '#lib/recipes/amount.ts'
import { type KitchenMeasure, kitchenMeasure } from '#lib/recipes/kitchen-measures.ts'
import { type Invoice, newestInvoice } from '#lib/recipes/purchased.ts'
import {
  ceilOf,
  compared,
  isZero,
  plus,
  type Rational,
  ratio,
  ZERO,
} from '#lib/recipes/rational.ts'
import { typedAmount } from '#lib/recipes/typed-amount.ts'
import { LIES, type Lies } from '#lib/station/codes/lies.ts'

export type PacksWhy =
  /** No invoice says what a pack holds. */
  | 'no-pack'
  | 'pack-not-understood'
  /** The card weighs what is bought by volume, or counts it in another way: nothing joins them. */
  | 'no-density'

export interface Buying {
  readonly ingredient: string
  readonly name: string
  /** Where it lies; null: nobody said. */
  readonly lies: Lies | null
  /** As purchased, for all foods together, exactly; of weight and volume one each. */
  readonly amounts: readonly Amount[]
  /** Whole packs of the newest invoice, that hold all of it; null where that can't be said. */
  readonly packs: number | null
  /** The newest; null where there is none. */
  readonly invoice: Invoice | null
  /** Why there are no packs, or fewer than it takes; null: nothing is amiss. */
  readonly why: PacksWhy | null
  /** What of it came last; null: nothing lately, or nobody can tell. */
  readonly came: Came | null
  /** Foods that it is for, and of those the ones that take it to taste. */
  readonly foods: readonly string[]
  readonly toTaste: readonly string[]
  /** For these it can't be reckoned: it takes more than its amounts. */
  readonly lacking: readonly Lacking[]
}

/** What can't be reckoned for any of its foods. */
export interface LackingOf {
  readonly name: string
  /** At least one. */
  readonly of: readonly Lacking[]
}

export interface PurchaseFacts {
  /** What lies nowhere comes first; places that nothing lies in are left away. */
  readonly places: readonly { readonly lies: Lies | null; readonly buy: readonly Buying[] }[]
  readonly lacking: readonly LackingOf[]
}

/** A row for each product, whatever number of foods it is for. */
const lackingRows = (lacking: readonly Lacking[]): readonly LackingOf[] => {
  const rows = new Map<string, { name: string; of: Lacking[] }>()
  for (const one of lacking) {
    const key = one.ingredient ?? `recipe ${one.name}`
    const row = rows.get(key) ?? { name: one.name, of: [] }
    row.of.push(one)
    rows.set(key, row)
  }
  return [...rows.values()]
}

/** Packs of one invoice line that hold shares which may be weighed, measured or counted. */
export const packsFor = (
  shares: NeededOf['shares'],
  invoice: Invoice | null,
): { readonly packs: number | null; readonly why: PacksWhy | null } => {
  if (invoice === null) return { packs: null, why: 'no-pack' }
  const typed = typedAmount(invoice.packTyped)
  if (!typed.ok || typed.amount === null) return { packs: null, why: 'pack-not-understood' }
  const pack = typed.amount
  let sum: Rational = ZERO
  for (const { amount, density } of shares) {
    const times = timesIn(amount, pack, density)
    if (times === null) return { packs: null, why: 'no-density' }
    sum = plus(sum, times)
  }
  return isZero(sum) ? { packs: null, why: null } : { packs: Number(ceilOf(sum)), why: null }
}

/** As it is bought: never less than it takes. What is counted, cut or canned comes whole. */
export const toBuy = (amount: Amount): KitchenMeasure => {
  if (amount.kind === 'count' || amount.kind === 'cans')
    return kitchenMeasure({ ...amount, size: ratio(ceilOf(amount.size)) })
  const near = kitchenMeasure(amount)
  return compared(near.size, amount.size) >= 0
    ? near
    : kitchenMeasure({ ...amount, size: plus(near.size, near.step) })
}

/** @param lies where each ingredient lies, by its id; `came` what of each came last */
export const purchaseFacts = (
  cards: Cards,
  foods: readonly PrepChoice[],
  lies: Readonly<Record<string, Lies | undefined>>,
  came: Readonly<Record<string, Came | undefined>> = {},
): PurchaseFacts => {
  const { of, lacking } = neededFor(cards, foods)
  const all = of.map((one): Buying => {
    const { ingredient, name, shares, toTaste } = one
    const invoice = newestInvoice(cards.box.bought.get(ingredient)?.invoices ?? [])
    return {
      ...{ ingredient, name, toTaste, invoice },
      ...packsFor(shares, invoice),
      lies: lies[ingredient] ?? null,
      came: came[ingredient] ?? null,
      amounts: added(shares.map(({ amount }) => amount)),
      foods: [...new Set([...shares.map(({ food }) => food), ...toTaste])],
      lacking: lacking.filter((lack) => lack.ingredient === ingredient),
    }
  })
  const sorted = all.sort((one, other) => (one.name < other.name ? -1 : 1))
  const reckoned = new Set<string | null>(of.map(({ ingredient }) => ingredient))
  return {
    places: [null, ...LIES].flatMap((place) => {
      const buy = sorted.filter((one) => one.lies === place)
      return buy.length > 0 ? [{ lies: place, buy }] : []
    }),
    lacking: lackingRows(lacking.filter(({ ingredient }) => !reckoned.has(ingredient))),
  }
}
