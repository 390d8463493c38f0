import { useEffect, useState } from 'react'
import { useCrew } from '#components/live/crew.tsx'
import { endsIn, type Selling, sellingNow } from '#lib/rooms/pans/facts/selling.ts'
import type { RunningState } from '#lib/service/state.ts'

/** Looked at again after so long at the latest: a longer wait is no timer any more. */
const LONGEST_MS = 3_600_000

/**
 * The service as an order of so many builds finds it that is sent now. It is drawn again when food
 * ends too early for such an order, and not by the second.
 */
export const useSelling = (state: RunningState, builds: number): Selling => {
  // Whole seconds, rather early than late: it changes by a breath with each word of the server.
  const offset = useCrew((view) => Math.ceil(view.serverOffset / 1_000) * 1_000)
  const [looked, setLooked] = useState(0)
  const wait = endsIn(state, builds, performance.now() + offset)
  useEffect(() => {
    if (wait === null) return
    const timer = setTimeout(() => setLooked(looked + 1), Math.min(wait + 1, LONGEST_MS))
    return () => clearTimeout(timer)
  }, [wait, looked])
  return sellingNow(state, builds, performance.now() + offset)
}
