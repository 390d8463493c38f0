import { createContext, type ReactNode, useContext } from 'react'
import { DeviceWordsProvider } from '#components/device/words.tsx'
import { givenWords } from '#components/live/given-words.ts'
import { sayWhyHeld } from '#lib/rooms/care/words/held-en.ts'
import { handOverEn } from '#lib/rooms/shelf/words/hand-over-en.ts'
import { sayCents } from '#lib/words/amounts-en.ts'
import { sayTime } from '#lib/words/clock-en.ts'
import type { InAnyLanguage } from '#lib/words/in-any-language.ts'
import { loadRefusals } from '#lib/words/refusals-later-en.ts'
import { markLines } from '#lib/words/service-en.ts'

const english = {
  loadRefusals,
  sayCents,
  sayTime,
  sayWhyHeld,
  markLines,
  ...handOverEn,
}

export type HandOverWords = InAnyLanguage<typeof english>

const Context = createContext<HandOverWords | null>(null)

export function HandOverWordsProvider({ children }: { readonly children: ReactNode }) {
  return (
    <DeviceWordsProvider>
      <Context value={english}>{children}</Context>
    </DeviceWordsProvider>
  )
}

export const useHandOverWords = (): HandOverWords => givenWords(useContext(Context))
