import { toolAmount } from '#lib/measure/portion-tools.ts'
import type { Component, StationDocument } from '#lib/station/station-document.ts'

/** What one portion takes out of a pan. */
export interface Portion {
  readonly unit: 'mg' | 'piece'
  /** Whole milligrams or pieces, at least 1. */
  readonly amount: number
}

/** One portion of a component, as its tool gives it. */
export const portionOf = (component: Component): Portion => {
  const rule = component.portion
  return toolAmount(rule.tool === 'cup' ? { tool: 'lidded-cup' } : rule)
}

export const portionsOf = (station: StationDocument): Record<string, Portion> =>
  Object.fromEntries(station.components.map((one) => [one.id, portionOf(one)]))
