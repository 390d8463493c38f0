/** Sends what is received or goes back; what isn't answered goes again under its id, so that it is done once. */
import { nanoid } from 'nanoid'
import { useRef, useState } from 'react'
import { isRefused, tell } from '#components/access/ask.ts'
import { type ReceivingWords, useReceivingWords } from '#components/receiving/words.tsx'
import type { LarderAnswer, LarderCommand, LarderRefusal } from '#lib/larder/command.ts'

export interface Told {
  readonly is: 'done' | 'watch' | 'no'
  readonly what: string
  /** Another product came: its label is to be read. */
  readonly unread?: string
}

const sayRefusal = (words: ReceivingWords, refusal: LarderRefusal): string => {
  if (refusal.code === 'delivery-turned-away') return words.against(refusal.because)
  if (refusal.code === 'delivery-lot-too-long') return words.lotTooLong(refusal.most)
  return words.refused[refusal.code] ?? words.notDone
}

interface Answered {
  readonly answer: LarderAnswer | { readonly answer: 'not taken' }
}

export const useReceive = (): {
  readonly busy: boolean
  /** Null where it was done, else what to say. */
  readonly send: (command: LarderCommand) => Promise<Told | null>
} => {
  const words = useReceivingWords()
  const [busy, setBusy] = useState(false)
  const waiting = useRef<{ readonly asked: string; readonly id: string } | null>(null)
  const send = async (command: LarderCommand): Promise<Told | null> => {
    const asked = JSON.stringify(command)
    const id = waiting.current?.asked === asked ? waiting.current.id : nanoid()
    waiting.current = { asked, id }
    setBusy(true)
    const told = await tell<Answered>('/larder/do', { id, command })
    setBusy(false)
    if (isRefused(told)) return { is: 'no', what: words.unknown }
    const { answer } = told
    if (answer.answer === 'not taken') return { is: 'no', what: words.unknown }
    waiting.current = null
    return answer.answer === 'accepted'
      ? null
      : { is: 'no', what: sayRefusal(words, answer.refusal) }
  }
  return { busy, send }
}
