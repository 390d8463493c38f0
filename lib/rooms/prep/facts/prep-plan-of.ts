/** What tasks are worked out of, by a plan, the document that it follows, and what is chosen of each food. */
import { instantOn } from '#lib/measure/civil.ts'
import { type PrepChoice, prepFoodOf } from '#lib/prep/food-of.ts'
import type { Here, Period, PrepPlan } from '#lib/prep/prep-plan.ts'
import { limitsWith, MINUTE_MS } from '#lib/safety/limits.ts'
import type { ServicePlan } from '#lib/service/events/plan-event.ts'
import { findComponent } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** As much of a plan as its tasks depend on; one that is being typed too. */
export type PlanForPrep = Pick<
  ServicePlan,
  'on' | 'opensAt' | 'closesAt' | 'bells' | 'items' | 'crew'
>

export interface PrepSaid {
  readonly foods: readonly PrepChoice[]
  readonly ownTable: boolean
  readonly from: number
}

/** Both ends of a time on a civil date; none where a clock is set forward over one. */
const stretchOn = (
  on: string,
  said: { readonly from: string; readonly to: string },
  timeZone: string,
): readonly { readonly from: number; readonly to: number }[] => {
  const from = instantOn(on, said.from, timeZone)
  const to = instantOn(on, said.to, timeZone)
  return from === null || to === null || to <= from ? [] : [{ from, to }]
}

/** When who is there, by a plan. */
export const hereOf = ({ crew }: Pick<PlanForPrep, 'crew'>, timeZone: string): readonly Here[] =>
  crew.flatMap(({ id, adult, on, from, to }) =>
    stretchOn(on, { from, to }, timeZone).map((one) => ({ who: id, adult, ...one })),
  )

/** The periods of every day on which somebody is there, in order. */
export const periodsOf = (
  { on, bells, crew }: Pick<PlanForPrep, 'on' | 'bells' | 'crew'>,
  { day, timeZone }: Pick<StationDocument, 'day' | 'timeZone'>,
): readonly Period[] => {
  const rings = day.bells?.find(({ id }) => id === bells)?.periods ?? []
  const days = [...new Set([...crew.map((one) => one.on), on])].sort()
  return days.flatMap((one) =>
    rings.flatMap((period) =>
      stretchOn(one, period, timeZone).map((at) => ({ name: period.name, ...at })),
    ),
  )
}

/** The tool works in whole minutes: nothing is put before the next. */
const nextMinute = (at: number): number => Math.ceil(at / MINUTE_MS) * MINUTE_MS

export const prepPlanOf = (
  station: StationDocument,
  plan: PlanForPrep,
  { foods, ownTable, from }: PrepSaid,
): PrepPlan => {
  const { timeZone } = station
  const limits = limitsWith(station.safety.limits)
  const items = plan.items ?? station.items.map(({ id }) => id)
  return {
    timeZone,
    doorsOpen: plan.opensAt,
    doorsClose: plan.closesAt,
    from: nextMinute(from),
    crew: hereOf(plan, timeZone),
    periods: periodsOf(plan, station),
    foods: foods.flatMap((choice) => {
      const component = findComponent(station, choice.component)
      return component ? [prepFoodOf(station, component, choice, items)] : []
    }),
    items,
    ownTable,
    cooling: {
      first: limits.coolingFirstWithin.withinMs,
      total: limits.coolingWithin.withinMs,
      fromRoom: limits.coolingFromRoomWithin.withinMs,
    },
  }
}
