/** What a field tells, and who is sent it. Default deny: a role is sent what stands here and nothing else. */
import type { Role } from '#lib/service/roles.ts'

export const FIELD_CLASSES = [
  'always',
  'needs',
  'text',
  'name',
  'money',
  'cost',
  'adult',
  'initials',
  'reason',
  'pack',
] as const

/**
 * `always`: the work itself, numbers, times and food. `needs`: a guest's needs by code and handling.
 * `text`: what the crew called a probe or a screen. `name`: a guest's name, and that there is one.
 * `money`: what a guest pays, and whether. `cost`: what something costs the station, or saves it.
 * `adult`: who proved to be the adult. `initials`: who read something. `reason`: why a guest has a need.
 * `pack`: what a pack says word by word.
 */
export type FieldClass = (typeof FIELD_CLASSES)[number]

/** What every screen of the crew needs to fold what happened: nothing can stand in its place. */
export type CrewClass = 'always' | 'needs' | 'text'

/** What some screen of the crew isn't sent, so that each field says what stands in its place. */
export type ApartClass = Exclude<FieldClass, CrewClass>

/** All but the pick-up screen, which is sent its picture and none of these. */
export type CrewRole = Exclude<Role, 'pick-up'>

type Sent = Readonly<Record<CrewClass, true>> & Readonly<Record<ApartClass, boolean>>

const WORK = { always: true, needs: true, text: true } as const
const GUEST = { name: true, money: true } as const
const NO_GUEST = { name: false, money: false } as const
const ADULTS = { cost: true, adult: true } as const
const NO_ADULTS = { cost: false, adult: false } as const

/**
 * Nobody is sent initials: a crew's device asks for those of who is there on a planned day (GET
 * /services/crew). Nor reasons: the person in charge asks for those with a passphrase, and a tablet that
 * was left lying has none to show. The words of an ingredient
 * list are read where the station is set up, and are too long for every screen of a service.
 */
const NOBODY = { initials: false, reason: false, pack: false } as const

export const SENT: Readonly<Record<CrewRole, Sent>> = {
  counter: { ...WORK, ...GUEST, ...NO_ADULTS, ...NOBODY },
  assembly: { ...WORK, ...NO_GUEST, ...NO_ADULTS, ...NOBODY },
  'hand-over': { ...WORK, ...GUEST, ...NO_ADULTS, ...NOBODY },
  lead: { ...WORK, ...GUEST, ...ADULTS, ...NOBODY },
  'in-charge': { ...WORK, ...GUEST, ...ADULTS, ...NOBODY },
}

export const isCrew = (role: Role): role is CrewRole => role !== 'pick-up'

/** Whether a role is sent fields of a class. */
export const isSent = (role: Role, fieldClass: FieldClass): boolean =>
  isCrew(role) && SENT[role][fieldClass]

/** Roles of one sight are sent the same, so that it is worked out once for all of them. */
export type Sight = string

export const sightOf = (role: CrewRole): Sight =>
  FIELD_CLASSES.filter((one) => SENT[role][one]).join(' ')

export const CREW: readonly CrewRole[] = ['counter', 'assembly', 'hand-over', 'lead', 'in-charge']

/** One role of each sight. */
export const SIGHTS: ReadonlyMap<Sight, CrewRole> = new Map(
  [...CREW].reverse().map((role) => [sightOf(role), role]),
)
