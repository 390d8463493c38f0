import { nanoid } from 'nanoid'
import { useCallback, useRef, useState } from 'react'
import { isRefused, tell } from '#components/access/ask.ts'
import { useAccess } from '#components/access/use-access.ts'
import { useTastingWords } from '#components/tasting/words.tsx'
import { findComponent } from '#lib/station/find.ts'
import type { TastingCommand } from '#lib/tasting/command.ts'
import type { TastingDone, TastingsNow } from '#lib/tasting/http.ts'

const LOOK_EVERY_MS = 3_000

export interface TastingAct {
  readonly busy: boolean
  /** Why the last one wasn't done; null where it was. */
  readonly said: string | null
  /** Id of the tasting, or null where it wasn't done. */
  readonly act: (command: TastingCommand) => Promise<string | null>
  readonly hush: () => void
}

/** The tastings of the page's station, and what is asked of them. */
export const useTastings = () => {
  const words = useTastingWords()
  const { seen, refused, again } = useAccess<TastingsNow>('/tasting/now', LOOK_EVERY_MS)
  const [busy, setBusy] = useState(false)
  const [said, setSaid] = useState<string | null>(null)
  /** What isn't answered goes again under its id, so that it is taken once. */
  const waiting = useRef<{ readonly asked: string; readonly id: string } | null>(null)
  const station = seen?.station
  const act = async (command: TastingCommand): Promise<string | null> => {
    const asked = JSON.stringify(command)
    const id = waiting.current?.asked === asked ? waiting.current.id : nanoid()
    waiting.current = { asked, id }
    setBusy(true)
    const told = await tell<TastingDone>('/tasting/do', { id, command })
    if (isRefused(told)) setSaid(words.lostDo)
    else {
      waiting.current = null
      const { answer } = told
      const name = (one: string) => (station && findComponent(station, one)?.name) ?? one
      setSaid(answer.answer === 'accepted' ? null : words.refusal(answer.refusal, name))
    }
    await again()
    setBusy(false)
    return isRefused(told) || told.answer.answer === 'refused' ? null : told.answer.tasting
  }
  const hush = useCallback(() => setSaid(null), [])
  const acting: TastingAct = { busy, said, act, hush }
  return { seen, refused, acting }
}
