'use client'

import { createContext, type ReactNode, useContext } from 'react'
import { givenWords } from '#components/live/given-words.ts'
import { allergenPaperEn } from '#lib/paper/words/allergen-paper-en.ts'
import { frameEn } from '#lib/paper/words/frame-en.ts'
import { labelsEn } from '#lib/paper/words/labels-screen-en.ts'
import { larderLabelsEn } from '#lib/paper/words/larder-labels-en.ts'
import { listsEn } from '#lib/paper/words/lists-en.ts'
import { packListEn } from '#lib/paper/words/pack-list-en.ts'
import { prepSheetEn } from '#lib/paper/words/prep-sheet-en.ts'
import { purchaseListEn } from '#lib/paper/words/purchase-list-en.ts'
import { readingsSheetEn } from '#lib/paper/words/readings-sheet-en.ts'
import { recipeCardEn } from '#lib/paper/words/recipe-card-en.ts'
import { setUpSheetEn } from '#lib/paper/words/set-up-sheet-en.ts'
import type { InAnyLanguage } from '#lib/words/in-any-language.ts'

const english = {
  ...{ frame: frameEn, setUp: setUpSheetEn, lists: listsEn },
  ...{ prep: prepSheetEn, pack: packListEn, purchase: purchaseListEn },
  ...{ labels: labelsEn, larder: larderLabelsEn },
  ...{ readings: readingsSheetEn, card: recipeCardEn, allergens: allergenPaperEn },
}

export type PaperWords = InAnyLanguage<typeof english>

const Context = createContext<PaperWords | null>(null)

export function PaperWordsProvider({ children }: { readonly children: ReactNode }) {
  return <Context value={english}>{children}</Context>
}

export const usePaperWords = (): PaperWords => givenWords(useContext(Context))
