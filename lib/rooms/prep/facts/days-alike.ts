/** How much of each component guests would want, over ten days like the one that is planned. */
import { buildsToCome } from '#lib/estimate/arrivals.ts'
import { portionChances } from '#lib/estimate/count-chances.ts'
import { demandOf } from '#lib/estimate/demand.ts'
import { demandAhead, type PastTaught, type ServiceAhead } from '#lib/estimate/demand-history.ts'
import { noCounts } from '#lib/estimate/service-counts.ts'

export interface DaysAlike {
  /** Portions wanted on average. */
  readonly mean: number
  /** Portions wanted on ten days, the fewest first: the middles of ten equally likely tenths. */
  readonly days: readonly number[]
}

const DAYS = 10
/** Portions beyond this many standard deviations are left out of the chances. */
const FAR = 6

/** Of every component that is known, by what past services taught and the guests expected. */
export const daysAlike = (
  taught: PastTaught,
  ahead: ServiceAhead,
): Readonly<Record<string, DaysAlike>> => {
  const { profile, straying, shares } = demandAhead(taught, ahead)
  const none = noCounts(ahead.opens, ahead.closes, ahead.expected)
  const horizons = buildsToCome(none, profile, straying, ahead.opens, true)
  return Object.fromEntries(
    Object.entries(shares).map(([component, share]): [string, DaysAlike] => {
      const { until, perTaking } = demandOf(horizons, none, component, share)
      const takings = until(ahead.closes)
      const each = perTaking.reduce((sum, chance, index) => sum + chance * (index + 1), 0)
      const mean = takings.mean * each
      const most = Math.ceil(mean + FAR * perTaking.length * Math.sqrt(takings.variance) + 10)
      const days: number[] = []
      let sum = 0
      for (const [portions, chance] of portionChances(takings, perTaking, most).entries()) {
        sum += chance
        while (days.length < DAYS && sum >= (days.length + 0.5) / DAYS) days.push(portions)
      }
      while (days.length < DAYS) days.push(most)
      return [component, { mean, days }]
    }),
  )
}
