import { useEffect, useState } from 'react'
import type { CrewHere } from '#lib/rooms/day/views/services-here.ts'
import type { ServicePlan } from '#lib/service/events/plan-event.ts'

const isAnswer = (value: unknown): value is CrewHere =>
  typeof value === 'object' && value !== null && 'names' in value

const NOBODY: CrewHere['names'] = {}

/** Initials of who is there, by the id of each entry of the plan's crew; asked for anew as that changes. */
export const useCrewInitials = (
  service: string | null,
  crew: ServicePlan['crew'],
): CrewHere['names'] => {
  const [names, setNames] = useState(NOBODY)
  // biome-ignore lint/correctness/useExhaustiveDependencies: another crew has other initials
  useEffect(() => {
    if (service === null) return
    let isShown = true
    const search = new URLSearchParams(location.search)
    search.set('service', service)
    const ask = async () => {
      const response = await fetch(`/services/crew?${search}`, { cache: 'no-store' })
      const value: unknown = await response.json()
      if (isShown && isAnswer(value)) setNames(value.names)
    }
    // Unanswered, each is known by a number.
    void ask().catch(() => undefined)
    return () => {
      isShown = false
    }
  }, [service, crew])
  return names
}
