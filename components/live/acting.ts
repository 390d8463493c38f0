import { useCallback, useEffect, useState } from 'react'
import { useCrew, useSend } from '#components/live/crew.tsx'
import { nameIn } from '#lib/menu/name-in.ts'
import type { Command } from '#lib/service/decide.ts'
import type { Proof } from '#lib/sync/crew-client.ts'
import { sayClock } from '#lib/words/clock-en.ts'

export interface Said {
  readonly kind: 'done' | 'refused'
  readonly text: string
}

export interface Acting {
  /** What came of the newest act. */
  readonly said: Said | null
  /** An act is sent and not answered yet. */
  readonly busy: boolean
  /** Sends; true once it is accepted. `done` is said then. `proof`: by the person in charge. */
  act(command: Command, done: string, proof?: Proof): Promise<boolean>
  hush(): void
}

/** The sentences of refusals are many and seldom said: fetched once the screen stands. */
const loadSentences = () => import('#lib/words/refusals-en.ts')

const PRELOAD_AFTER_MS = 1_500

/** Sends commands and keeps what is to be said of them: what was done, or why it was refused. */
export const useActing = (): Acting => {
  const send = useSend()
  const station = useCrew((view) => view.state.station)
  const [said, setSaid] = useState<Said | null>(null)
  const [underway, setUnderway] = useState(0)
  useEffect(() => {
    const timer = setTimeout(() => void loadSentences().catch(() => undefined), PRELOAD_AFTER_MS)
    return () => clearTimeout(timer)
  }, [])
  const act = useCallback(
    async (command: Command, done: string, proof?: Proof): Promise<boolean> => {
      setSaid(null)
      setUnderway((count) => count + 1)
      const answer = await send(command, undefined, proof)
      setUnderway((count) => count - 1)
      if (answer.answer === 'accepted') {
        setSaid({ kind: 'done', text: done })
        return true
      }
      const { sayNotTaken, sayRefusal } = await loadSentences()
      setSaid({
        kind: 'refused',
        text:
          answer.answer === 'refused'
            ? sayRefusal(answer.refusal, nameIn(station), (at) =>
                sayClock(at, station?.timeZone ?? 'UTC'),
              )
            : sayNotTaken(answer.because),
      })
      return false
    },
    [send, station],
  )
  return { said, busy: underway > 0, act, hush: () => setSaid(null) }
}
