import { useEffect, useState } from 'react'
import type { CrewHere } from '#lib/rooms/day/views/services-here.ts'
import type { ServicePlan } from '#lib/service/events/plan-event.ts'

const isAnswer = (value: unknown): value is CrewHere =>
  typeof value === 'object' && value !== null && 'names' in value

const AGAIN_AFTER_MS = 3_000

/** A crew as it is said, so that the same one that comes anew is asked for once. */
const said = (crew: ServicePlan['crew'] | undefined): string => JSON.stringify(crew ?? [])

/**
 * Initials of who is there, by the id of each entry of the plan's crew; asked for anew as that changes.
 * null until the server answered: unanswered it is asked again, and nobody is called by a number.
 */
export const useCrewInitials = (
  service: string | null,
  crew: ServicePlan['crew'] | undefined,
): CrewHere['names'] | null => {
  const [told, setTold] = useState<{ readonly of: string; readonly names: CrewHere['names'] }>()
  const of = said(crew)
  useEffect(() => {
    if (service === null) return
    let isShown = true
    let timer: ReturnType<typeof setTimeout> | undefined
    const search = new URLSearchParams(location.search)
    search.set('service', service)
    const ask = async () => {
      try {
        const response = await fetch(`/services/crew?${search}`, { cache: 'no-store' })
        const value: unknown = await response.json()
        // A device that isn't let in is told nobody.
        if (isShown) setTold({ of, names: isAnswer(value) ? value.names : {} })
      } catch {
        if (isShown) timer = setTimeout(() => void ask(), AGAIN_AFTER_MS)
      }
    }
    void ask()
    return () => {
      isShown = false
      clearTimeout(timer)
    }
  }, [service, of])
  return told?.of === of ? told.names : null
}
