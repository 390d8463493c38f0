import type { PlannedCrew, PlannedPeriod } from '#lib/service/events/plan-event.ts'

/** When somebody is there: a civil date, and times of day, "HH:MM". */
type ThereAt = Pick<PlannedCrew, 'on' | 'from' | 'to'>

/** Why what a plan says isn't taken. */
export type PlanRefusal =
  | { readonly code: 'closes-before-now'; readonly time: string }
  | { readonly code: 'plan-in-past'; readonly on: string; readonly time: string }
  | { readonly code: 'doors-close-first'; readonly opens: string; readonly closes: string }
  | { readonly code: 'over-midnight'; readonly from: string; readonly to: string }
  /** Clocks are set forward over it. */
  | { readonly code: 'no-such-time'; readonly on: string; readonly time: string }
  | { readonly code: 'after-the-service'; readonly on: string }
  /** One person’s entries of a plan overlap, or are an adult’s and a student’s; the second of them. */
  | ({ readonly code: 'there-twice' } & ThereAt)
  | ({ readonly code: 'adult-and-student' } & ThereAt)
  | ({ readonly code: 'plans-overlap' } & Omit<PlannedPeriod, 'opensAt' | 'closesAt'>)
  | { readonly code: 'not-as-planned' }
