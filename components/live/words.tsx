'use client'

/** What every screen says of its connection. */
import { createContext, type ReactNode, useContext } from 'react'
import { givenWords } from '#components/live/given-words.ts'
import { live } from '#lib/words/house/live-en.ts'
import type { InAnyLanguage } from '#lib/words/in-any-language.ts'

type Words = InAnyLanguage<typeof live>

const Context = createContext<Words | null>(null)

export function WordsProvider({ children }: { readonly children: ReactNode }) {
  return <Context value={live}>{children}</Context>
}

export const useWords = (): Words => givenWords(useContext(Context))
