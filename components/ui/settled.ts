import { useEffect, useRef } from 'react'

/** A second tap that comes within this many milliseconds was meant for what stood there before. */
export const DOUBLE_TAP_MS = 350

/** Tells whether what is shown has stood long enough to be tapped on purpose; `what` restarts it. */
export const useSettled = (what: unknown): (() => boolean) => {
  const since = useRef({ what: undefined as unknown, at: 0 })
  useEffect(() => {
    since.current = { what, at: performance.now() }
  }, [what])
  return () => performance.now() - since.current.at >= DOUBLE_TAP_MS
}
