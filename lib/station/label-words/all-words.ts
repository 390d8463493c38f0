/**
 * Words that name an allergen in an ingredient list. For proposals to a person who reads a label,
 * never for a decision. Where no source is named, the row says that it is from memory.
 */
import { EGG_WORDS } from '#lib/station/label-words/egg-words.ts'
import { GRAIN_WORDS } from '#lib/station/label-words/grain-words.ts'
import { MILK_WORDS } from '#lib/station/label-words/milk-words.ts'
import { PEANUT_WORDS, TREE_NUT_WORDS } from '#lib/station/label-words/nut-words.ts'
import { SEA_WORDS } from '#lib/station/label-words/sea-words.ts'
import { SEED_WORDS } from '#lib/station/label-words/seed-words.ts'
import { SOY_WORDS } from '#lib/station/label-words/soy-words.ts'
import type { WordRow } from '#lib/station/label-words/word-row.ts'

export const ALL_WORDS: readonly WordRow[] = [
  ...MILK_WORDS,
  ...EGG_WORDS,
  ...GRAIN_WORDS,
  ...SOY_WORDS,
  ...PEANUT_WORDS,
  ...TREE_NUT_WORDS,
  ...SEED_WORDS,
  ...SEA_WORDS,
]
