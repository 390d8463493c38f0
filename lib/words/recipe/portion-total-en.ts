/** Portion × count = total in English, the same on every sheet and screen. */
import type { PortionTotal } from '#lib/recipes/portion-total.ts'
import { toNumber } from '#lib/recipes/rational.ts'
import { counted } from '#lib/words/counted-en.ts'
import { quantityEn } from '#lib/words/quantity-en.ts'
import { sayAmount } from '#lib/words/recipe/measures-en.ts'

const NUMBER = new Intl.NumberFormat(quantityEn.locale, { maximumFractionDigits: 2 })

/** "24 × 1/2 cup" and "= 3 qt"; "36 × 1" and "= 36 pieces". */
export const portionTotalLines = ({
  portion,
  count,
  total,
}: PortionTotal): readonly [times: string, total: string] => {
  const many = NUMBER.format(toNumber(count))
  return portion.kind === 'count' && total.kind === 'count'
    ? [
        `${many} × ${NUMBER.format(toNumber(portion.size))}`,
        `= ${counted(toNumber(total.size), 'piece', 'pieces')}`,
      ]
    : [`${many} × ${sayAmount(portion)}`, `= ${sayAmount(total)}`]
}

/** The same on one line: "24 × 1/2 cup = 3 qt". */
export const sayPortionTotal = (total: PortionTotal): string => portionTotalLines(total).join(' ')
