'use client'

/** What Pans says where no service is open, or before its board is there. */
import { createContext, type ReactNode, useContext } from 'react'
import { givenWords } from '#components/live/given-words.ts'
import { pansFrame } from '#lib/rooms/pans/words/pans-frame-en.ts'
import { sayClock } from '#lib/words/clock-en.ts'
import type { InAnyLanguage } from '#lib/words/in-any-language.ts'

const english = { sayClock, ...pansFrame }

type PansFrameWords = InAnyLanguage<typeof english>

const Context = createContext<PansFrameWords | null>(null)

export function PansFrameWordsProvider({ children }: { readonly children: ReactNode }) {
  return <Context value={english}>{children}</Context>
}

export const usePansFrameWords = (): PansFrameWords => givenWords(useContext(Context))
