'use client'

import { createContext, type ReactNode, useContext } from 'react'
import { givenWords } from '#components/live/given-words.ts'
import type { AccessRefusal } from '#lib/access/http.ts'
import { sayDay } from '#lib/words/day-en.ts'
import { accessWords } from '#lib/words/house/access-en.ts'
import { sayFollows } from '#lib/words/house/follows-en.ts'
import { titles } from '#lib/words/house/titles-en.ts'
import type { InAnyLanguage } from '#lib/words/in-any-language.ts'

/** Every refusal has its words. */
const refused: Readonly<Record<AccessRefusal, string>> = accessWords.refused

const english = { ...accessWords, refused, sayDay, sayFollows, titles }

export type AccessWords = InAnyLanguage<typeof english>

const Context = createContext<AccessWords | null>(null)

export function AccessWordsProvider({ children }: { readonly children: ReactNode }) {
  return <Context value={english}>{children}</Context>
}

export const useAccessWords = (): AccessWords => givenWords(useContext(Context))
