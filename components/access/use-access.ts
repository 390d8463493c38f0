import { useCallback, useEffect, useRef, useState } from 'react'
import { isRefused, look } from '#components/access/ask.ts'
import type { AccessNow } from '#lib/access/http.ts'
import { mayActAs } from '#lib/access/roles-granted.ts'

/**
 * What stands at an address of the house, asked for again and again for as long as it is shown.
 * `seen` is null until it was answered, and stays as it was while the server is lost.
 */
export const useAccess = <Seen extends object>(
  path: string,
  everyMs: number,
): {
  readonly seen: Seen | null
  readonly refused: string | null
  readonly again: () => Promise<void>
} => {
  const [seen, setSeen] = useState<Seen | null>(null)
  const [refused, setRefused] = useState<string | null>(null)
  const isLed = useRef(false)
  const again = useCallback(async () => {
    // Asked before what only the lead is told, so that nobody is refused for having looked.
    if (path !== '/access' && !isLed.current) {
      const here = await look<AccessNow>('/access')
      if (isRefused(here)) return setRefused(here.code)
      if (here.you === null) return setRefused('not-joined')
      if (!mayActAs(here.you.role, 'lead')) return setRefused('not-yours')
      isLed.current = true
    }
    const answer = await look<Seen>(path)
    if (isRefused(answer)) {
      isLed.current = false
      return setRefused(answer.code)
    }
    setSeen(answer)
    setRefused(null)
  }, [path])
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined
    let isShown = true
    const round = async () => {
      clearTimeout(timer)
      await again()
      clearTimeout(timer)
      if (isShown) timer = setTimeout(() => void round(), everyMs)
    }
    const onSight = () => {
      if (document.visibilityState === 'visible') void round()
    }
    void round()
    document.addEventListener('visibilitychange', onSight)
    return () => {
      isShown = false
      clearTimeout(timer)
      document.removeEventListener('visibilitychange', onSight)
    }
  }, [again, everyMs])
  return { seen, refused, again }
}
