import type { PaperWords } from '#components/print/words.tsx'
import type { Asked } from '#lib/paper/page/fit-text.ts'
import type { AskedSection } from '#lib/paper/page/list-layout.ts'
import type { AskedBlank, AskedRow } from '#lib/paper/page/list-row.ts'
import type { Buying, PurchaseFacts } from '#lib/paper/purchase/purchase-facts.ts'

/** What is there, and what is bought then, in packs: written by hand in front of the shelf. */
const blanks = ({ blanks: words }: PaperWords['purchase']): readonly AskedBlank[] => [
  { of: 'have', before: words.have, width: 20, behind: '' },
  { of: 'buy', before: words.buy, width: 20, behind: '' },
]

const small = (texts: readonly string[]): readonly Asked[] =>
  texts.map((text) => ({ text, pt: 8.5, lines: 3 }))

const rowOf = ({ purchase: words }: PaperWords, one: Buying): AskedRow => ({
  ...{ id: one.ingredient, isTicked: true, drawing: 0, blanks: blanks(words) },
  cells: [
    [{ text: one.name, pt: 12, weight: 'bold', lines: 2 }],
    [
      { text: words.amount(one), pt: 12, lines: 3 },
      { text: words.andMore(one.lacking), pt: 9, weight: 'bold', lines: 4 },
    ],
    [{ text: words.for(one.foods), pt: 9, lines: 4 }],
    [
      { text: words.packs(one), pt: 12, weight: 'bold', lines: 2 },
      { text: one.packs === null ? '' : words.of(one), pt: 8.5, lines: 2 },
      { text: words.why(one.why), pt: 8.5, lines: 3 },
      ...small(one.lacking.length > 0 ? words.whyNot(one.lacking) : []),
      { text: words.came(one), pt: 9.5, lines: 2 },
    ],
  ],
})

/** What stands on the list, what nobody can reckon first. */
export const purchaseSections = (
  words: PaperWords,
  { places, lacking }: PurchaseFacts,
): readonly AskedSection[] => {
  const { purchase } = words
  const lack = purchase.lacking
  return [
    ...(lacking.length === 0
      ? []
      : [
          {
            ...{ title: lack, again: purchase.again(lack), note: '' },
            rows: lacking.map((one, at) => ({
              ...{ id: `lacking-${at}`, isTicked: true, drawing: 0, blanks: blanks(purchase) },
              cells: [
                [{ text: one.name, pt: 12, weight: 'bold' as const, lines: 2 }],
                small(purchase.asTyped(one.of)),
                [{ text: purchase.lackingFor(one.of), pt: 9, lines: 4 }],
                small(purchase.whyNot(one.of)),
              ],
            })),
          },
        ]),
    ...places.map(({ lies, buy }) => {
      const title = lies === null ? purchase.noPlace : purchase.places[lies]
      return {
        ...{ title, again: purchase.again(title), note: '' },
        rows: buy.map((one) => rowOf(words, one)),
      }
    }),
  ]
}
