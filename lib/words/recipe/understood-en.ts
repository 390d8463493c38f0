/** What an amount that was typed comes to, in English: said back beside the field. */
import type { Amount } from '#lib/recipes/amount.ts'
import { contentOf } from '#lib/recipes/cans.ts'
import { roughly } from '#lib/recipes/kitchen-measures.ts'
import { compared } from '#lib/recipes/rational.ts'
import { quantityEn } from '#lib/words/quantity-en.ts'
import { sayAmount } from '#lib/words/recipe/measures-en.ts'

const about = (ml: Parameters<typeof roughly>[0]): string => quantityEn.amount(roughly(ml))

/**
 * "about 6 1/2 qt, from 6 qt to 6 3/4 qt" of cans, "567 g" of 20 oz, "1 lb 4 oz" of 567 g; '' of what is counted.
 */
export const sayUnderstood = (amount: Amount): string => {
  if (amount.kind === 'count') return ''
  if (amount.kind !== 'cans')
    return sayAmount(amount, amount.written === 'metric' ? 'us' : 'metric')
  const content = contentOf(amount.can, amount.size)
  if (content === null) return ''
  const { ml, leastMl, mostMl } = content
  return compared(leastMl, mostMl) === 0
    ? `about ${about(ml)}`
    : `about ${about(ml)}, from ${about(leastMl)} to ${about(mostMl)}`
}
