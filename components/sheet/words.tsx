'use client'

import { createContext, type ReactNode, useContext } from 'react'
import { givenWords } from '#components/live/given-words.ts'
import { sheetWords } from '#lib/rooms/care/words/sheet-en.ts'
import { sayClock } from '#lib/words/clock-en.ts'
import type { InAnyLanguage } from '#lib/words/in-any-language.ts'

const english = { sayClock, ...sheetWords }

export type SheetWords = InAnyLanguage<typeof english>

const Context = createContext<SheetWords | null>(null)

export function SheetWordsProvider({ children }: { readonly children: ReactNode }) {
  return <Context value={english}>{children}</Context>
}

export const useSheetWords = (): SheetWords => givenWords(useContext(Context))
