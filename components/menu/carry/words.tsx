'use client'

import { createContext, type ReactNode, useContext } from 'react'
import { givenWords } from '#components/live/given-words.ts'
import { carryWords } from '#lib/carry/words/carry-en.ts'
import type { InAnyLanguage } from '#lib/words/in-any-language.ts'

type CarryWords = InAnyLanguage<typeof carryWords>

const Context = createContext<CarryWords | null>(null)

export function CarryWordsProvider({ children }: { readonly children: ReactNode }) {
  return <Context value={carryWords}>{children}</Context>
}

export const useCarryWords = (): CarryWords => givenWords(useContext(Context))
