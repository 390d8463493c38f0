/** Which limits bind food, and until when it lasts: what screens fold with, so that it stays small. */
import type { Component, StationDocument } from '#lib/menu/station-document.ts'
import type { FoodKind } from '#lib/safety/cooking.ts'
import { limitsWith, type SafetyLimits } from '#lib/safety/limits.ts'
import { earliestThrowOut, throwOutMoment } from '#lib/safety/time-control.ts'
import type { HeldStock } from '#lib/service/food-state.ts'
import type { RunningState } from '#lib/service/state.ts'

export const limitsOf = (station: StationDocument): SafetyLimits =>
  limitsWith(station.safety.limits)

/** What a component is cooked as. Where nobody has said, the highest limit holds. */
export const foodKindOf = ({ food }: Component): FoodKind => {
  if (food.kind === 'ready') return 'not-cooked'
  return food.kind ?? 'poultry-or-stuffed'
}

/** When food in a pan is thrown out, by its clock, its date and its day; null where none binds it. */
export const lastsUntil = (state: RunningState, stock: HeldStock): number | null => {
  const { food } = stock
  if (!food) return null
  const clock = food.clock && throwOutMoment(food.clock, stock.readings, limitsOf(state.station))
  return earliestThrowOut([clock, food.dateMark?.endsAt ?? null, food.dayEndsAt ?? null])
}
