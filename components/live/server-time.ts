import { useEffect, useState } from 'react'
import { useCrew } from '#components/live/crew.tsx'

/** The device's monotonic clock, read anew every `everyMs`. */
export const useMonotonic = (everyMs = 1_000): number => {
  const [now, setNow] = useState(() => performance.now())
  useEffect(() => {
    const timer = setInterval(() => setNow(performance.now()), everyMs)
    return () => clearInterval(timer)
  }, [everyMs])
  return now
}

/** The server's time in epoch milliseconds, kept by the monotonic clock between its words. */
export const useServerTime = (): number => {
  const offset = useCrew((view) => view.serverOffset)
  return useMonotonic() + offset
}
