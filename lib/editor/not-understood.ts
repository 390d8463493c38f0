/** Amounts and yields of a draft's cards that aren't understood, each at its field. */
import { type Draft, recordsIn, rowsOf, textIn } from '#lib/editor/draft.ts'
import type { Missing } from '#lib/editor/problem.ts'
import { typedAmount } from '#lib/recipes/typed-amount.ts'
import { typedYield } from '#lib/recipes/typed-yield.ts'
import { fitsTyped } from '#lib/recipes/wanted.ts'

const KINDS = ['recipe', 'component'] as const

const cardsNotUnderstood = (draft: Draft): readonly Missing[] =>
  KINDS.flatMap((entity) =>
    rowsOf(draft, entity).flatMap(({ id, row }) => {
      const of = (code: string, field: string): Missing => ({
        code,
        entity,
        id,
        field,
        costs: 'not-scaled',
      })
      const lines = recordsIn(row, 'lines').flatMap((line, at) => {
        const read = typedAmount(textIn(line, 'typed'))
        return read.ok || read.code === 'empty'
          ? []
          : [of(`amount-${read.code}`, `lines.${at}.typed`)]
      })
      const yields = textIn(row, 'yields')
      const read = typedYield(yields)
      return read.ok || read.code === 'empty'
        ? lines
        : [...lines, of(`yield-${read.code}`, 'yields')]
    }),
  )

/**
 * A line says why as `amount-range`, a yield as `yield-zero`, what a pot holds as `vessel-range`: the code of lib/recipes behind what it
 * is. What is left empty is missing, and told elsewhere. Nothing is refused for it: a station opens
 * with "a handful".
 */
export const notUnderstood = (draft: Draft): readonly Missing[] => [
  ...cardsNotUnderstood(draft),
  ...recordsIn(draft.rows.house, 'vessels').flatMap((one, at): readonly Missing[] => {
    const read = fitsTyped(textIn(one, 'holds'))
    return read.ok || read.code === 'empty'
      ? []
      : [
          {
            code: `vessel-${read.code}`,
            entity: 'house',
            id: 'house',
            field: `vessels.${at}.holds`,
            costs: 'not-scaled',
          },
        ]
  }),
]
