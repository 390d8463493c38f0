'use client'

import { createContext, type ReactNode, useContext } from 'react'
import { DeviceWordsProvider } from '#components/device/words.tsx'
import { givenWords } from '#components/live/given-words.ts'
import { plannedWords } from '#lib/rooms/day/words/planned-en.ts'
import { startWords } from '#lib/rooms/day/words/start-en.ts'
import { sayClock } from '#lib/words/clock-en.ts'
import { sayDate } from '#lib/words/day-en.ts'
import { titles } from '#lib/words/house/titles-en.ts'
import type { InAnyLanguage } from '#lib/words/in-any-language.ts'
import { loadRefusals } from '#lib/words/refusals-later-en.ts'

const english = { loadRefusals, titles, sayClock, sayDate, planned: plannedWords, ...startWords }

export type StartWords = InAnyLanguage<typeof english>

const Context = createContext<StartWords | null>(null)

export function StartWordsProvider({ children }: { readonly children: ReactNode }) {
  return (
    <DeviceWordsProvider>
      <Context value={english}>{children}</Context>
    </DeviceWordsProvider>
  )
}

export const useStartWords = (): StartWords => givenWords(useContext(Context))
