/** What is said where a passphrase is typed: on the first page, and on Pans. */
import { createContext, type ReactNode, useContext } from 'react'
import { givenWords } from '#components/live/given-words.ts'
import { sayClock } from '#lib/words/clock-en.ts'
import { inChargeWords } from '#lib/words/house/in-charge-card-en.ts'
import type { InAnyLanguage } from '#lib/words/in-any-language.ts'
import { loadRefusals } from '#lib/words/refusals-later-en.ts'

const english = { loadRefusals, sayClock, ...inChargeWords }

export type InChargeWords = InAnyLanguage<typeof english>

const Context = createContext<InChargeWords | null>(null)

export function InChargeWordsProvider({ children }: { readonly children: ReactNode }) {
  return <Context value={english}>{children}</Context>
}

export const useInChargeWords = (): InChargeWords => givenWords(useContext(Context))
