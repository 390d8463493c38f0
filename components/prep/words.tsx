'use client'

import { createContext, type ReactNode, useContext } from 'react'
import { givenWords } from '#components/live/given-words.ts'
import { packEn } from '#lib/rooms/prep/words/pack-en.ts'
import { prepEn } from '#lib/rooms/prep/words/prep-en.ts'
import { sayClock, sayLength, sayTime } from '#lib/words/clock-en.ts'
import type { InAnyLanguage } from '#lib/words/in-any-language.ts'
import { loadRefusals } from '#lib/words/refusals-later-en.ts'

const english = { loadRefusals, sayClock, sayLength, sayTime, pack: packEn, ...prepEn }

export type PrepWords = InAnyLanguage<typeof english>

const Context = createContext<PrepWords | null>(null)

export function PrepWordsProvider({ children }: { readonly children: ReactNode }) {
  return <Context value={english}>{children}</Context>
}

export const usePrepWords = (): PrepWords => givenWords(useContext(Context))
