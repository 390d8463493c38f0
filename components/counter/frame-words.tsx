'use client'

/** What the counter says before its working part is there. */
import { createContext, type ReactNode, useContext } from 'react'
import { DeviceWordsProvider } from '#components/device/words.tsx'
import { givenWords } from '#components/live/given-words.ts'
import { counterFrame } from '#lib/rooms/orders/words/counter-frame-en.ts'
import type { InAnyLanguage } from '#lib/words/in-any-language.ts'

export type CounterFrameWords = InAnyLanguage<typeof counterFrame>

const Context = createContext<CounterFrameWords | null>(null)

export function CounterFrameWordsProvider({ children }: { readonly children: ReactNode }) {
  return (
    <DeviceWordsProvider>
      <Context value={counterFrame}>{children}</Context>
    </DeviceWordsProvider>
  )
}

export const useCounterFrameWords = (): CounterFrameWords => givenWords(useContext(Context))
