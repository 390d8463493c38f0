/** The times of a plan: that there are such, in their order, and no other plan has them. */
import { instantOn } from '#lib/measure/civil.ts'
import type { PlannedPeriod } from '#lib/service/events/plan-event.ts'
import type { Refusal } from '#lib/service/refusal.ts'

export interface SaidTimes {
  readonly on: string
  readonly doorsOpen: string
  readonly doorsClose: string
}

/** "HH:MM" on a civil date as an instant, or why there is none. */
const momentOn = (on: string, time: string, timeZone: string): number | Refusal =>
  instantOn(on, time, timeZone) ?? { code: 'no-such-time', on, time }

/** When doors open and close, epoch milliseconds, or what is wrong with that. */
export const doorsOf = (
  { on, doorsOpen, doorsClose }: SaidTimes,
  { now, timeZone }: { readonly now: number; readonly timeZone: string },
): { readonly opensAt: number; readonly closesAt: number } | Refusal => {
  if (doorsClose <= doorsOpen)
    return { code: 'doors-close-first', opens: doorsOpen, closes: doorsClose }
  const opensAt = momentOn(on, doorsOpen, timeZone)
  if (typeof opensAt !== 'number') return opensAt
  const closesAt = momentOn(on, doorsClose, timeZone)
  if (typeof closesAt !== 'number') return closesAt
  return closesAt <= now ? { code: 'plan-in-past', on, time: doorsClose } : { opensAt, closesAt }
}

/** What is wrong with when somebody is there for a service; null where nothing is. */
export const thereProblem = (
  { on, from, to }: { readonly on: string; readonly from: string; readonly to: string },
  service: string,
  timeZone: string,
): Refusal | null => {
  if (on > service) return { code: 'after-the-service', on }
  if (to <= from) return { code: 'over-midnight', from, to }
  const missing = [from, to].find((time) => instantOn(on, time, timeZone) === null)
  return missing === undefined ? null : { code: 'no-such-time', on, time: missing }
}

interface CrewSaid {
  readonly initials: string
  readonly adult: boolean
  readonly on: string
  readonly from: string
  readonly to: string
}

/**
 * What is wrong with one person's entries: two hands would be counted of whoever is said twice for the
 * same minutes, and a certified adult of who is a student (2-101.11, from memory). Initials are in no
 * refusal: the second of the two entries is named by its time. Initials are compared as they are said.
 */
export const twiceProblem = (crew: readonly CrewSaid[]): Refusal | null => {
  for (const [index, one] of crew.entries()) {
    const own = crew.slice(0, index).filter(({ initials }) => initials === one.initials)
    const { on, from, to } = one
    if (own.some(({ adult }) => adult !== one.adult))
      return { code: 'adult-and-student', on, from, to }
    if (own.some((other) => other.on === on && other.from < to && from < other.to))
      return { code: 'there-twice', on, from, to }
  }
  return null
}

/** Another plan whose doors are open within the same time; null where there is none. */
export const overlapping = (
  service: string,
  { opensAt, closesAt }: { readonly opensAt: number; readonly closesAt: number },
  plans: readonly PlannedPeriod[],
): Refusal | null => {
  const other = plans.find(
    (one) => one.service !== service && one.opensAt < closesAt && opensAt < one.closesAt,
  )
  if (!other) return null
  const { on, doorsOpen, doorsClose } = other
  return { code: 'plans-overlap', service: other.service, on, doorsOpen, doorsClose }
}
