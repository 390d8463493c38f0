/** What of the house is open to a device. */
import type { AccessNow } from '#lib/access/http.ts'
import { mayActAs } from '#lib/access/roles-granted.ts'
import type { Role } from '#lib/service/roles.ts'

/** Whether a device may open a role's screen; not while nothing is known yet. */
export const mayOpen = (now: AccessNow | null, role: Role): boolean => {
  if (now === null) return false
  return now.you === null ? now.mayWalkDemo : mayActAs(now.you.role, role)
}

/**
 * How a device stands to the house: it is in; it walks through the demo of a house that is made, or
 * of one that nobody made yet; it isn't in; there is none to be in.
 */
export type Standing = 'looking' | 'in' | 'demo' | 'demo-unmade' | 'out' | 'unmade'

export const standingOf = (now: AccessNow | null): Standing => {
  if (now === null) return 'looking'
  if (now.you !== null) return 'in'
  if (now.house === 'none') return now.mayWalkDemo ? 'demo-unmade' : 'unmade'
  return now.mayWalkDemo ? 'demo' : 'out'
}
