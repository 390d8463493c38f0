/** Which screens a proved device may open: its own role's, and those of less. */
import type { Role } from '#lib/service/roles.ts'

/** What a device may act as, by the role that it was proved for. A role that isn't named may nothing. */
const ACTS_AS: Readonly<Record<Role, readonly Role[]>> = {
  'in-charge': ['in-charge', 'lead', 'counter', 'assembly', 'hand-over', 'pick-up'],
  lead: ['lead', 'counter', 'assembly', 'hand-over', 'pick-up'],
  counter: ['counter', 'pick-up'],
  assembly: ['assembly', 'pick-up'],
  'hand-over': ['hand-over', 'pick-up'],
  'pick-up': ['pick-up'],
}

/** Whether a device that was proved for one role may be asked as another. Never more than its own. */
export const mayActAs = (proved: Role, asked: Role): boolean => ACTS_AS[proved].includes(asked)
