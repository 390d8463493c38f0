export const ROLES = ['counter', 'assembly', 'hand-over', 'lead', 'in-charge', 'pick-up'] as const

export type Role = (typeof ROLES)[number]
