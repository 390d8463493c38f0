'use client'

import { createContext, type ReactNode, useContext } from 'react'
import { givenWords } from '#components/live/given-words.ts'
import { readingWords } from '#lib/rooms/food/words/reading-pad-en.ts'
import { sayFinding } from '#lib/words/findings-en.ts'
import type { InAnyLanguage } from '#lib/words/in-any-language.ts'
import { quantityEn } from '#lib/words/quantity-en.ts'
import { sayAmount, sayMeasure } from '#lib/words/recipe/measures-en.ts'
import { safetyWords } from '#lib/words/safety-en.ts'
import { tastingEn } from '#lib/words/tasting/tasting-en.ts'

const PERCENT = new Intl.NumberFormat(quantityEn.locale, { style: 'percent' })

const english = {
  ...tastingEn,
  sayFinding,
  sayMeasure,
  sayAmount,
  readings: readingWords,
  safety: safetyWords,
  sayLimit: readingWords.limit,
  percent: (share: number): string => PERCENT.format(share),
}

export type TastingWords = InAnyLanguage<typeof english>

const Context = createContext<TastingWords | null>(null)

export function TastingWordsProvider({ children }: { readonly children: ReactNode }) {
  return <Context value={english}>{children}</Context>
}

export const useTastingWords = (): TastingWords => givenWords(useContext(Context))
