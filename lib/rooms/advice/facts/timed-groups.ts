import type { TimedGroup } from '#lib/estimate/demand-history.ts'
import type { ServicePlan } from '#lib/service/events/plan-event.ts'

const minuteOf = (time: string): number => {
  const [hours = 0, minutes = 0] = time.split(':').map(Number)
  return hours * 60 + minutes
}

/** Groups of a plan that come at a time, by the minute of the civil day; none where there is no plan. */
export const timedGroups = (
  plan: { readonly guests: Pick<ServicePlan['guests'], 'groups'> } | undefined,
): readonly TimedGroup[] =>
  (plan?.guests.groups ?? []).flatMap(({ guests, at }) =>
    at === undefined || at === '' ? [] : [{ minute: minuteOf(at), guests }],
  )
