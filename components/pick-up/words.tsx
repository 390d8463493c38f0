'use client'

import { createContext, type ReactNode, useContext } from 'react'
import { DeviceWordsProvider } from '#components/device/words.tsx'
import { givenWords } from '#components/live/given-words.ts'
import { pickUpWords } from '#lib/rooms/shelf/words/pick-up-en.ts'
import type { InAnyLanguage } from '#lib/words/in-any-language.ts'

export type PickUpWords = InAnyLanguage<typeof pickUpWords>

const Context = createContext<PickUpWords | null>(null)

export function PickUpWordsProvider({ children }: { readonly children: ReactNode }) {
  return (
    <DeviceWordsProvider>
      <Context value={pickUpWords}>{children}</Context>
    </DeviceWordsProvider>
  )
}

export const usePickUpWords = (): PickUpWords => givenWords(useContext(Context))
