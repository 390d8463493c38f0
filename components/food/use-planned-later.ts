import { useEffect, useState } from 'react'
import type { plannedLater } from '#lib/rooms/prep/facts/planned-later.ts'
import type { RunningState } from '#lib/service/state.ts'

type PlannedLater = typeof plannedLater

/** `plannedLater` of a service that is planned. It brings the whole planner, which an open one never needs. */
export const usePlannedLater = (
  state: RunningState,
  component: string,
  startedAt: number,
): number | null => {
  const [asked, setAsked] = useState<{ readonly of: PlannedLater } | null>(null)
  const isPlanned = state.stage === 'planned'
  useEffect(() => {
    let isShown = true
    const load = async () => {
      const { plannedLater: of } = await import('#lib/rooms/prep/facts/planned-later.ts')
      if (isShown) setAsked({ of })
    }
    if (isPlanned) void load().catch(() => undefined)
    return () => {
      isShown = false
    }
  }, [isPlanned])
  return isPlanned && asked ? asked.of(state, component, startedAt) : null
}
