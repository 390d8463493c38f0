import type { ServicePlan } from '#lib/service/events/plan-event.ts'

/** Guests that a plan expects, groups with them; null where nobody said. */
export const expectedBy = ({ guests: { walkIn, groups } }: ServicePlan): number | null =>
  walkIn === null && groups.length === 0
    ? null
    : groups.reduce((sum, { guests }) => sum + guests, walkIn ?? 0)
