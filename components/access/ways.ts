import type { Role } from '#lib/service/roles.ts'

/** Where each role works. */
export const WAY_OF: Readonly<Record<Role, string>> = {
  'in-charge': '/',
  lead: '/pans',
  counter: '/counter',
  assembly: '/assembly',
  'hand-over': '/hand-over',
  'pick-up': '/pick-up',
}

const ALONG: readonly Role[] = ['counter', 'assembly', 'hand-over', 'pick-up']

/** Whose screen stands at a path: the lead's where it is no other's. */
export const roleAt = (path: string): Role => ALONG.find((role) => WAY_OF[role] === path) ?? 'lead'
