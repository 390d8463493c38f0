'use client'

import { createContext, type ReactNode, useContext } from 'react'
import { givenWords } from '#components/live/given-words.ts'
import type { KeptId } from '#lib/access/kept.ts'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { privacyWords } from '#lib/words/house/privacy-en.ts'
import type { InAnyLanguage } from '#lib/words/in-any-language.ts'

/** Every row of the table has its words. */
const rows: Readonly<Record<KeptId, { readonly name: string; readonly what: string }>> =
  privacyWords.rows

const english = { ...privacyWords, rows, needName: counter.needTile }

type PrivacyWords = InAnyLanguage<typeof english>

const Context = createContext<PrivacyWords | null>(null)

export function PrivacyWordsProvider({ children }: { readonly children: ReactNode }) {
  return <Context value={english}>{children}</Context>
}

export const usePrivacyWords = (): PrivacyWords => givenWords(useContext(Context))
