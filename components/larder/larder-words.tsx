'use client'

import { createContext, type ReactNode, useContext } from 'react'
import { givenWords } from '#components/live/given-words.ts'
import { lotLabelWords } from '#lib/rooms/care/words/lot-label-en.ts'
import { plannedWords } from '#lib/rooms/day/words/planned-en.ts'
import { sayMuch } from '#lib/words/amounts-en.ts'
import { sayClock } from '#lib/words/clock-en.ts'
import { sayDate, sayDay } from '#lib/words/day-en.ts'
import type { InAnyLanguage } from '#lib/words/in-any-language.ts'
import { sayLotProblem } from '#lib/words/larder/lot-en.ts'
import { larderScreen } from '#lib/words/larder/screen-en.ts'
import { takeWords } from '#lib/words/larder/take-en.ts'
import { loadRefusals } from '#lib/words/refusals-later-en.ts'

const english = {
  ...larderScreen,
  take: takeWords,
  label: lotLabelWords,
  sayPlanned: plannedWords.times,
  sayMuch,
  /** What is in the larder may be due in the evening or the next morning. */
  sayTime: sayClock,
  sayDate,
  sayDay,
  sayLotProblem,
  loadRefusals,
}

type LarderWords = InAnyLanguage<typeof english>

const Context = createContext<LarderWords | null>(null)

export function LarderWordsProvider({ children }: { readonly children: ReactNode }) {
  return <Context value={english}>{children}</Context>
}

export const useLarderWords = (): LarderWords => givenWords(useContext(Context))
