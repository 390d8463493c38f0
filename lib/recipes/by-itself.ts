/** What doesn't scale by itself, and has to be told. */
import { compared, type Rational, ratio } from '#lib/recipes/rational.ts'

export type ByTaste = 'to-taste' | 'salt' | 'spice' | 'leavening' | 'thickener' | 'rough'

/**
 * By words of an ingredient's name in English. Seasoning and leavening don't go up in step with
 * the rest in large batches, nor does what thickens, since less boils away: common practice, no
 * source, and so no other figure is put in their place.
 */
const NAMES: readonly (readonly [ByTaste, RegExp])[] = [
  ['leavening', /\b(baking (powder|soda)|bicarbonate|yeast|cream of tartar|sourdough)\b/i],
  ['salt', /\bsalt\b(?! pork)|\bbouillon\b|\bstock base\b/i],
  [
    'spice',
    /\b(pepper(corns?)? ?\(?(ground|black|white|cayenne)?\)?$|black pepper|white pepper|cayenne|chil[il]i? (powder|flakes)|cumin|curry|paprika|cinnamon|cloves?, ground|nutmeg|oregano|thyme|sage|spices?|seasoning|garlic powder|onion powder|hot sauce|vanilla|extract)\b/i,
  ],
  ['thickener', /\b(corn ?starch|starch|gelatin|roux|agar|xanthan)\b/i],
]

/** A vegetable's name, not the spice: bell peppers, a red pepper. */
const VEGETABLE = /\b(bell|sweet|red|green|yellow|roasted|peppers)\b/i

/** What an ingredient's name says of it; null for what goes up in step. */
export const byTaste = (name: string): ByTaste | null =>
  NAMES.find(
    ([kind, pattern]) => pattern.test(name) && !(kind === 'spice' && VEGETABLE.test(name)),
  )?.[0] ?? null

/** Up to that factor either way a card is followed as it is. Common practice, no source. */
const STEADY = ratio(3, 2)

/** Whether a factor is so far from 1 that what doesn't scale by itself is told. */
export const isFarFromCard = (factor: Rational): boolean =>
  compared(factor, STEADY) > 0 || compared(factor, ratio(STEADY.under, STEADY.over)) < 0
