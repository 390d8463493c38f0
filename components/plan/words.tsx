'use client'

import { createContext, type ReactNode, useContext } from 'react'
import { givenWords } from '#components/live/given-words.ts'
import { papersEn } from '#lib/rooms/prep/words/papers-en.ts'
import { planEn } from '#lib/rooms/prep/words/plan-en.ts'
import { sayClock, sayTime } from '#lib/words/clock-en.ts'
import type { InAnyLanguage } from '#lib/words/in-any-language.ts'
import { centsIn } from '#lib/words/money.ts'
import { measuredEn } from '#lib/words/recipe/measured-en.ts'
import { loadRefusals } from '#lib/words/refusals-later-en.ts'

const english = {
  ...{ loadRefusals, sayClock, sayTime, centsIn },
  ...{ measured: measuredEn, papers: papersEn },
  ...planEn,
}

export type PlanWords = InAnyLanguage<typeof english>

const Context = createContext<PlanWords | null>(null)

export function PlanWordsProvider({ children }: { readonly children: ReactNode }) {
  return <Context value={english}>{children}</Context>
}

export const usePlanWords = (): PlanWords => givenWords(useContext(Context))
