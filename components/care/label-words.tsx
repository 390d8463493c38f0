import { createContext, type ReactNode, useContext } from 'react'
import { givenWords } from '#components/live/given-words.ts'
import { InChargeWordsProvider } from '#components/start/in-charge-words.tsx'
import { firstWords } from '#lib/rooms/care/words/first-of-all-en.ts'
import { labelWords } from '#lib/rooms/care/words/labels-en.ts'
import { sheetWords } from '#lib/rooms/care/words/sheet-en.ts'
import { sayClock } from '#lib/words/clock-en.ts'
import { startingWith } from '#lib/words/findings-en.ts'
import type { InAnyLanguage } from '#lib/words/in-any-language.ts'
import { GLUTEN_STATEMENT, sayLabelProblem, sourceName } from '#lib/words/label-problems-en.ts'
import { needName } from '#lib/words/service-en.ts'

const english = {
  allergenSheet: sheetWords,
  first: firstWords,
  sayClock,
  glutenStatement: GLUTEN_STATEMENT,
  sayLabelProblem,
  sourceName,
  needName,
  startingWith,
  ...labelWords,
}

export type LabelWords = InAnyLanguage<typeof english>

const Context = createContext<LabelWords | null>(null)

export function LabelWordsProvider({ children }: { readonly children: ReactNode }) {
  return (
    <InChargeWordsProvider>
      <Context value={english}>{children}</Context>
    </InChargeWordsProvider>
  )
}

export const useLabelWords = (): LabelWords => givenWords(useContext(Context))
