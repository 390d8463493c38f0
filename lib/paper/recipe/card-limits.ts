/** Which limits bind a food on its card, each with its paragraph. */
import { cookingLimit } from '#lib/safety/cooking.ts'
import type { HeatLimit, TemperatureLimit, TimeLimit } from '#lib/safety/limits.ts'
import { foodKindOf, limitsOf } from '#lib/service/food-limits.ts'
import type { Component, StationDocument } from '#lib/station/station-document.ts'

export interface CardLimits {
  /** null: it isn't cooked here. */
  readonly cook: HeatLimit | null
  /** null: dry. */
  readonly hold: TemperatureLimit | null
  /** Of what is cooked: to the first within a time, then to the second within another, both from the start. */
  readonly cool: readonly { readonly to: TemperatureLimit; readonly within: TimeLimit }[]
  /** null: it is never reheated. */
  readonly reheat: HeatLimit | null
}

export const cardLimits = (station: StationDocument, component: Component): CardLimits => {
  const limits = limitsOf(station)
  const cook = cookingLimit(foodKindOf(component), component.food.cookedIn, limits)
  return {
    cook,
    hold:
      component.held === 'dry'
        ? null
        : component.held === 'cold'
          ? limits.coldHolding
          : component.food.roast
            ? limits.hotHoldingRoast
            : limits.hotHolding,
    cool:
      cook === null
        ? []
        : [
            { to: limits.coolingFirstTo, within: limits.coolingFirstWithin },
            { to: limits.coolingTo, within: limits.coolingWithin },
          ],
    reheat: cook !== null && component.food.reheatable ? limits.reheat : null,
  }
}
