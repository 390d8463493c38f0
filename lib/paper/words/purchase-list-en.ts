/** The purchase list in English. */
import type { Lacking } from '#lib/paper/purchase/needed.ts'
import { type Buying, type PacksWhy, toBuy } from '#lib/paper/purchase/purchase-facts.ts'
import { listsEn } from '#lib/paper/words/lists-en.ts'
import type { Lies } from '#lib/station/codes/lies.ts'
import { counted, list } from '#lib/words/counted-en.ts'
import { sayDate, sayDateOfYear } from '#lib/words/day-en.ts'
import { inSentence } from '#lib/words/findings-en.ts'
import { sayMeasure } from '#lib/words/recipe/measures-en.ts'
import { sayPacks } from '#lib/words/recipe/packs-en.ts'

const WHY: Readonly<Record<PacksWhy, string>> = {
  'no-pack': 'no invoice says what a pack holds',
  'pack-not-understood': 'what its pack holds isn’t understood',
  'no-density':
    'bought by another kind of measure than the card’s: write both on the card, as 1 cup (8 oz), or what is in a pack, as 1 case of 12 each',
}

const foodsOf = (of: readonly Lacking[]): ReadonlySet<string> => new Set(of.map(({ food }) => food))

export const purchaseListEn = {
  title: 'Purchase list',
  places: {
    'dry-store': 'Dry store',
    cooler: 'Cooler',
    freezer: 'Freezer',
    'that-day': 'Bought that day',
  } satisfies Readonly<Record<Lies, string>>,
  noPlace: 'Nobody has said where it is stored',
  columns: { what: 'What', needed: 'It takes', for: 'For', buy: 'Buy' },
  again: (place: string) => `… ${place}`,
  /** "2 cases of 6 × #10 cans"; '' where no pack can be said. */
  packs: ({ packs, invoice }: Pick<Buying, 'packs' | 'invoice'>) =>
    packs === null || invoice === null ? '' : sayPacks(packs, invoice.packTyped),
  of: ({ invoice }: Pick<Buying, 'invoice'>) =>
    invoice === null ? '' : `by the invoice of ${sayDateOfYear(invoice.date)}`,
  why: (why: PacksWhy | null) => (why === null ? '' : WHY[why]),
  amount: ({ amounts, toTaste }: Pick<Buying, 'amounts' | 'toTaste'>) =>
    [
      ...amounts.map((one) => sayMeasure(toBuy(one), one.kind)),
      ...(toTaste.length > 0 ? ['to taste'] : []),
    ].join(' + '),
  for: (foods: readonly string[]) => list(foods.map(inSentence), 'and'),
  /** "Came Thu, Dec 3: 2 packs"; '' where nothing came lately. */
  came: ({ came }: Pick<Buying, 'came'>) =>
    came === null
      ? ''
      : `Came ${sayDate(came.on)}${came.packs === null ? '' : `: ${counted(came.packs, 'pack', 'packs')}`}`,
  blanks: { have: 'have', buy: 'buy' },
  lacking: 'Not reckoned: look for yourself',
  lackingFor: (of: readonly Lacking[]) => `for ${list([...foodsOf(of)].map(inSentence), 'and')}`,
  asTyped: (of: readonly Lacking[]) =>
    [...new Set(of.map(({ typed }) => typed))].flatMap((typed) =>
      typed === '' ? [] : [`on the card: ${typed}`],
    ),
  /** Why each can't be reckoned; by food where that differs. */
  whyNot: (of: readonly Lacking[]): readonly string[] => {
    const why = new Set(of.map(listsEn.notReckoned))
    return why.size === 1 ? [...why] : of.map((one) => `${one.food}: ${listsEn.notReckoned(one)}`)
  },
  /** It takes more than its amount: '' where all of it is reckoned. */
  andMore: (of: readonly Lacking[]) =>
    of.length === 0
      ? ''
      : `and more for ${list([...foodsOf(of)].map(inSentence), 'and')}: not reckoned`,
  foot: 'As purchased, for the loads of the plan. Packs are rounded up, and so is what is counted. Amounts typed at a pan are for one load. What is there isn’t taken off: look, and write it in.',
  setPlaces: 'Where is it stored?',
  toSay: (count: number) => `${count} to say`,
  notSet: 'Not recorded. Try once more.',
  boughtBy: 'Bought by',
} as const
