'use client'

import { createContext, type ReactNode, useContext } from 'react'
import { LabelWordsProvider } from '#components/care/label-words.tsx'
import { givenWords } from '#components/live/given-words.ts'
import { labelFormWords } from '#lib/editor/words/label-form-en.ts'
import { accessWords } from '#lib/words/house/access-en.ts'
import type { InAnyLanguage } from '#lib/words/in-any-language.ts'

const { refused, connecting, againIn } = accessWords

const english = { ...labelFormWords, refused, connecting, againIn }

export type LabelFormWords = InAnyLanguage<typeof english>

const Context = createContext<LabelFormWords | null>(null)

export function LabelFormWordsProvider({ children }: { readonly children: ReactNode }) {
  return (
    <LabelWordsProvider>
      <Context value={english}>{children}</Context>
    </LabelWordsProvider>
  )
}

export const useLabelFormWords = (): LabelFormWords => givenWords(useContext(Context))
