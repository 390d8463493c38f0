import { useEffect, useState } from 'react'
import type { SheetAnswer } from '#lib/rooms/care/views/allergen-sheet.ts'

/** A label that changes is on every open sheet within this time, milliseconds. */
const AGAIN_AFTER_MS = 5_000

/** A server that doesn't answer for so long counts as lost. */
const PATIENCE_MS = 4_000

export interface SheetNow {
  readonly answer: SheetAnswer | null
  /** The server doesn't answer now, so what was answered may not be so any more. */
  readonly isLost: boolean
}

const isAnswer = (value: unknown): value is SheetAnswer =>
  typeof value === 'object' && value !== null && 'at' in value && 'facts' in value

/** Our own server's answer; its shape is guarded by the build that both are of. */
const ask = async (): Promise<SheetAnswer> => {
  const response = await fetch(`/allergens${location.search}`, {
    cache: 'no-store',
    signal: AbortSignal.timeout(PATIENCE_MS),
  })
  const answer: unknown = await response.json()
  if (!response.ok || !isAnswer(answer)) throw new Error('that is no sheet')
  return answer
}

/** What the sheet is made of, asked for again and again for as long as it is shown. */
export const useSheet = (): SheetNow => {
  const [now, setNow] = useState<SheetNow>({ answer: null, isLost: false })
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined
    let isShown = true
    const look = async () => {
      clearTimeout(timer)
      const answer = await ask().catch(() => null)
      if (!isShown) return
      setNow((before) =>
        answer ? { answer, isLost: false } : { answer: before.answer, isLost: true },
      )
      timer = setTimeout(() => void look(), AGAIN_AFTER_MS)
    }
    const onSight = () => {
      if (document.visibilityState === 'visible') void look()
    }
    void look()
    document.addEventListener('visibilitychange', onSight)
    return () => {
      isShown = false
      clearTimeout(timer)
      document.removeEventListener('visibilitychange', onSight)
    }
  }, [])
  return now
}
