'use client'

import { createContext, type ReactNode, useContext } from 'react'
import { givenWords } from '#components/live/given-words.ts'
import { sayTime } from '#lib/words/clock-en.ts'
import { sayDate, sayDay } from '#lib/words/day-en.ts'
import type { InAnyLanguage } from '#lib/words/in-any-language.ts'
import { receivingWords } from '#lib/words/receiving/receiving-en.ts'

const english = { sayTime, sayDay, sayDate, ...receivingWords }

export type ReceivingWords = InAnyLanguage<typeof english>

const Context = createContext<ReceivingWords | null>(null)

export function ReceivingWordsProvider({ children }: { readonly children: ReactNode }) {
  return <Context value={english}>{children}</Context>
}

export const useReceivingWords = (): ReceivingWords => givenWords(useContext(Context))
