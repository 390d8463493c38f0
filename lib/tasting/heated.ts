/** Whether what is cooked for a tasting was read at its limit or above: no reading never passes. */
import {
  cookingLimit,
  type HeatLack,
  type HeatReading,
  type HeatVerdict,
  heatedTo,
  kindToCook,
} from '#lib/safety/cooking.ts'
import { type HeatLimit, limitsWith } from '#lib/safety/limits.ts'
import { findComponent } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import type { Tasting } from '#lib/tasting/tasting.ts'

/** A food of the tasting that can't be tasted yet. */
export interface ToCookOn {
  readonly component: string
  readonly why: HeatLack
}

/** What it is cooked to; null where it isn't cooked here. */
export const tastingLimit = (station: StationDocument, component: string): HeatLimit | null => {
  const food = findComponent(station, component)?.food
  return food
    ? cookingLimit(kindToCook(food.kind), food.cookedIn, limitsWith(station.safety.limits))
    : null
}

/** Its readings, the oldest first. */
export const readOf = (
  { readings }: Pick<Tasting, 'readings'>,
  component: string,
): readonly HeatReading[] => readings.filter((one) => one.component === component)

/** null where it isn't cooked here. What the line has no more has no limit that is known: not met. */
export const heatOf = (
  station: StationDocument,
  tasting: Pick<Tasting, 'readings'>,
  component: string,
): HeatVerdict | null => {
  if (!findComponent(station, component)) return { met: false, why: 'no-reading' }
  const limit = tastingLimit(station, component)
  return limit && heatedTo(readOf(tasting, component), limit)
}

/** What can't be said ready to taste, in the tasting's order; empty where all can. */
export const toCookOn = (
  station: StationDocument,
  tasting: Pick<Tasting, 'readings' | 'components'>,
): readonly ToCookOn[] =>
  tasting.components.flatMap((component) => {
    const verdict = heatOf(station, tasting, component)
    return verdict === null || verdict.met ? [] : [{ component, why: verdict.why }]
  })
