'use client'

import { createContext, type ReactNode, useContext } from 'react'
import { givenWords } from '#components/live/given-words.ts'
import { deviceEn } from '#lib/words/house/device-en.ts'
import type { InAnyLanguage } from '#lib/words/in-any-language.ts'

type DeviceWords = InAnyLanguage<typeof deviceEn>

const Context = createContext<DeviceWords | null>(null)

export function DeviceWordsProvider({ children }: { readonly children: ReactNode }) {
  return <Context value={deviceEn}>{children}</Context>
}

export const useDeviceWords = (): DeviceWords => givenWords(useContext(Context))
