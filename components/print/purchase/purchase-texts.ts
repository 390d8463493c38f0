import type { PaperWords } from '#components/print/words.tsx'
import type { AskedSection } from '#lib/paper/page/list-layout.ts'
import type { Buying, PurchaseFacts } from '#lib/paper/purchase/purchase-facts.ts'

const rowOf = ({ purchase: words }: PaperWords, one: Buying) => ({
  ...{ id: one.ingredient, isTicked: true, drawing: 0, blanks: [] },
  cells: [
    [{ text: one.name, pt: 11, weight: 'bold' as const, lines: 2 }],
    [
      { text: words.packs(one), pt: 11, weight: 'bold' as const, lines: 2 },
      { text: one.packs === null ? '' : words.of(one), pt: 8.5, lines: 2 },
      { text: words.why(one.why), pt: 9, weight: 'bold' as const, lines: 3 },
    ],
    [{ text: words.amount(one), pt: 11, lines: 3 }],
    [{ text: words.for(one.foods), pt: 9, lines: 3 }],
  ],
})

/** What stands on the list, what nobody can reckon first. */
export const purchaseSections = (
  words: PaperWords,
  { places, lacking }: PurchaseFacts,
): readonly AskedSection[] => {
  const { purchase, lists } = words
  const lack = purchase.lacking
  return [
    ...(lacking.length === 0
      ? []
      : [
          {
            ...{ title: lack, again: purchase.again(lack), note: '' },
            rows: lacking.map((one, at) => ({
              ...{ id: `lacking-${at}`, isTicked: true, drawing: 0, blanks: [] },
              cells: [
                [{ text: one.name, pt: 11, weight: 'bold' as const, lines: 2 }],
                [{ text: lists.notReckoned(one), pt: 9, lines: 3 }],
                [{ text: purchase.asTyped(one.typed), pt: 9, lines: 3 }],
                [{ text: purchase.lackingFor(one.food), pt: 9, lines: 3 }],
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
