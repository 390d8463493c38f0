import { createContext, type ReactNode, useContext } from 'react'
import { givenWords } from '#components/live/given-words.ts'
import { sayWhyHeld } from '#lib/rooms/care/words/held-en.ts'
import { inChargeEn } from '#lib/rooms/care/words/in-charge-en.ts'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { lacksWords } from '#lib/rooms/orders/words/lacks-en.ts'
import { overTheLine } from '#lib/rooms/orders/words/over-the-line-en.ts'
import { readBackText, sayReadBack } from '#lib/rooms/orders/words/read-back-en.ts'
import { shortEn } from '#lib/rooms/orders/words/short-en.ts'
import { ticketsEn } from '#lib/rooms/orders/words/tickets-en.ts'
import { turnedEn } from '#lib/rooms/orders/words/turned-en.ts'
import { sayCents } from '#lib/words/amounts-en.ts'
import { sayClock, sayTime } from '#lib/words/clock-en.ts'
import { rowFinding, sayFinding } from '#lib/words/findings-en.ts'
import type { InAnyLanguage } from '#lib/words/in-any-language.ts'
import { needsEn } from '#lib/words/needs-en.ts'
import { sayNotTaken, sayRefusal } from '#lib/words/refusals-en.ts'
import { loadRefusals } from '#lib/words/refusals-later-en.ts'
import { foodOf, markLines, needName, stateName } from '#lib/words/service-en.ts'

const english = {
  loadRefusals,
  sayCents,
  needs: needsEn,
  ranShort: shortEn,
  lacks: lacksWords,
  onTicket: ticketsEn,
  turned: turnedEn,
  over: overTheLine,
  inCharge: inChargeEn,
  sayClock,
  sayTime,
  sayFinding,
  rowFinding,
  sayWhyHeld,
  readBackText,
  sayReadBack,
  sayNotTaken,
  sayRefusal,
  foodOf,
  needName,
  markLines,
  stateName,
  ...counter,
}

export type CounterWords = InAnyLanguage<typeof english>

const Context = createContext<CounterWords | null>(null)

export function CounterWordsProvider({ children }: { readonly children: ReactNode }) {
  return <Context value={english}>{children}</Context>
}

export const useCounterWords = (): CounterWords => givenWords(useContext(Context))
