import { createContext, type ReactNode, useContext } from 'react'
import { DeviceWordsProvider } from '#components/device/words.tsx'
import { givenWords } from '#components/live/given-words.ts'
import { sayWhyHeld } from '#lib/rooms/care/words/held-en.ts'
import { assemblyEn } from '#lib/rooms/making/words/assembly-en.ts'
import { screensEn } from '#lib/rooms/making/words/screens-en.ts'
import { sayFluidOunces, sayWeight } from '#lib/words/amounts-en.ts'
import type { InAnyLanguage } from '#lib/words/in-any-language.ts'
import { quantityEn } from '#lib/words/quantity-en.ts'
import { loadRefusals } from '#lib/words/refusals-later-en.ts'
import { markLines } from '#lib/words/service-en.ts'

const english = {
  loadRefusals,
  quantity: quantityEn,
  sayFluidOunces,
  sayWeight,
  sayWhyHeld,
  markLines,
  ...assemblyEn,
  ...screensEn,
}

export type AssemblyWords = InAnyLanguage<typeof english>

const Context = createContext<AssemblyWords | null>(null)

export function AssemblyWordsProvider({ children }: { readonly children: ReactNode }) {
  return (
    <DeviceWordsProvider>
      <Context value={english}>{children}</Context>
    </DeviceWordsProvider>
  )
}

export const useAssemblyWords = (): AssemblyWords => givenWords(useContext(Context))
