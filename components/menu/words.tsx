'use client'

import { createContext, type ReactNode, useContext } from 'react'
import { givenWords } from '#components/live/given-words.ts'
import { menuEn } from '#lib/editor/words/menu-en.ts'
import type { InAnyLanguage } from '#lib/words/in-any-language.ts'

export type MenuWords = InAnyLanguage<typeof menuEn>

const Context = createContext<MenuWords | null>(null)

export function MenuWordsProvider({ children }: { readonly children: ReactNode }) {
  return <Context value={menuEn}>{children}</Context>
}

export const useMenuWords = (): MenuWords => givenWords(useContext(Context))
