import { useCallback, useEffect, useState } from 'react'
import { useCrew, useSend } from '#components/live/crew.tsx'
import type { NotTaken, Refusal } from '#lib/service/refusal.ts'
import type { Command } from '#lib/spine/registry.ts'
import { nameIn } from '#lib/station/name-in.ts'
import type { Proof } from '#lib/sync/crew-client.ts'
import type { NameOf, SayTime } from '#lib/words/said-here.ts'

/** A screen's words for what is refused: many and seldom said, so that they come later. */
interface RefusalWords {
  readonly sayRefusal: (refusal: Refusal, name: NameOf, time: SayTime) => string
  readonly sayNotTaken: (because: NotTaken) => string
  readonly sayClock: (at: number, timeZone: string) => string
}

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
  /** Says what came of something that was sent in another way. */
  say(said: Said): void
  hush(): void
}

const PRELOAD_AFTER_MS = 1_500

/** Sends commands and keeps what is to be said of them: what was done, or why it was refused. */
export const useActing = (loadRefusals: () => Promise<RefusalWords>): Acting => {
  const send = useSend()
  const station = useCrew((view) => view.state.station)
  const [said, setSaid] = useState<Said | null>(null)
  const [underway, setUnderway] = useState(0)
  useEffect(() => {
    const timer = setTimeout(() => void loadRefusals().catch(() => undefined), PRELOAD_AFTER_MS)
    return () => clearTimeout(timer)
  }, [loadRefusals])
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
      const { sayNotTaken, sayRefusal, sayClock } = await loadRefusals()
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
    [loadRefusals, send, station],
  )
  return { said, busy: underway > 0, act, say: setSaid, hush: () => setSaid(null) }
}
