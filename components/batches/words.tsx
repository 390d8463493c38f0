import { createContext, type ReactNode, useContext } from 'react'
import { givenWords } from '#components/live/given-words.ts'
import { aheadWords } from '#lib/rooms/food/words/ahead-en.ts'
import type { InAnyLanguage } from '#lib/words/in-any-language.ts'

type BatchesWords = InAnyLanguage<typeof aheadWords>

const Context = createContext<BatchesWords | null>(null)

export function BatchesWordsProvider({ children }: { readonly children: ReactNode }) {
  return <Context value={aheadWords}>{children}</Context>
}

export const useBatchesWords = (): BatchesWords => givenWords(useContext(Context))
