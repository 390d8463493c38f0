/** What Pans says of the line, of what is to do next, and of what stands behind. */
import { createContext, type ReactNode, useContext } from 'react'
import { DeviceWordsProvider } from '#components/device/words.tsx'
import { givenWords } from '#components/live/given-words.ts'
import { calmWords } from '#lib/rooms/advice/words/calm-en.ts'
import { doNextWords } from '#lib/rooms/advice/words/do-next-en.ts'
import { roundTaskWords } from '#lib/rooms/advice/words/round-en.ts'
import { firstWords } from '#lib/rooms/care/words/first-of-all-en.ts'
import { sayWhyHeld } from '#lib/rooms/care/words/held-en.ts'
import { batchWords } from '#lib/rooms/food/words/batches-en.ts'
import { handedOverWords } from '#lib/rooms/food/words/handed-over-en.ts'
import { potWords } from '#lib/rooms/food/words/job-lacks-en.ts'
import { sayDegrees } from '#lib/rooms/food/words/reading-en.ts'
import { vesselWords } from '#lib/rooms/food/words/vessels-en.ts'
import { lineWords } from '#lib/rooms/pans/words/line-en.ts'
import { pansWords } from '#lib/rooms/pans/words/pans-en.ts'
import { sayClock, sayLength, sayTime } from '#lib/words/clock-en.ts'
import type { InAnyLanguage } from '#lib/words/in-any-language.ts'
import { loadRefusals } from '#lib/words/refusals-later-en.ts'

export const pansEnglish = {
  advice: doNextWords,
  roundTask: roundTaskWords,
  first: firstWords,
  givenOut: handedOverWords,
  calm: calmWords,
  batches: { ...batchWords, ...potWords },
  sayDegrees,
  sayWhyHeld,
  sayTime,
  sayClock,
  sayLength,
  loadRefusals,
  onLine: { ...lineWords, ...vesselWords },
  ...pansWords,
}

export type PansWords = InAnyLanguage<typeof pansEnglish>

const Context = createContext<PansWords | null>(null)

export function PansWordsProvider({ children }: { readonly children: ReactNode }) {
  return (
    <DeviceWordsProvider>
      <Context value={pansEnglish}>{children}</Context>
    </DeviceWordsProvider>
  )
}

export const usePansWords = (): PansWords => givenWords(useContext(Context))
