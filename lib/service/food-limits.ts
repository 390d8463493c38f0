/** Which limits bind food, and until when it lasts: what screens fold with, so that it stays small. */

import { type FoodKind, kindToCook } from '#lib/safety/cooking.ts'
import { limitsWith, type SafetyLimits } from '#lib/safety/limits.ts'
import type { Reading } from '#lib/safety/readings.ts'
import { earliestThrowOut, throwOutMoment } from '#lib/safety/time-control.ts'
import type { HeldFood } from '#lib/service/events/food-event.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { Component, StationDocument } from '#lib/station/station-document.ts'

export const limitsOf = (station: StationDocument): SafetyLimits =>
  limitsWith(station.safety.limits)

/** What a component is cooked as. Where nobody has said, the highest limit holds. */
export const foodKindOf = ({ food }: Component): FoodKind => kindToCook(food.kind)

/** What binds food, wherever it is. */
export interface Bound {
  /** null: nothing is known. */
  readonly food: Pick<HeldFood, 'clock' | 'dateMark' | 'dayEndsAt'> | null
  readonly readings: readonly Reading[]
}

/** When food is thrown out, by its clock, its date and its day; null where none binds it. */
export const lastsUntil = (state: RunningState, { food, readings }: Bound): number | null => {
  if (!food) return null
  const clock = food.clock && throwOutMoment(food.clock, readings, limitsOf(state.station))
  return earliestThrowOut([clock, food.dateMark?.endsAt ?? null, food.dayEndsAt ?? null])
}
