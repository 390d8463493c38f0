import type { Component, StationDocument } from '#lib/menu/station-document.ts'
import { densityGPerMl, portionMg } from '#lib/quantity/portion.ts'
import { scoopVolumeMl } from '#lib/quantity/scoops.ts'

/** What one portion takes out of a pan. */
export interface Portion {
  readonly unit: 'mg' | 'piece'
  /** Whole milligrams or pieces, at least 1. */
  readonly amount: number
}

/**
 * One portion of a component: scoops by volume and density, rounded once to the milligram;
 * tongs by weight; pieces and lidded cups by count.
 */
export const portionOf = (component: Component): Portion => {
  const rule = component.portion
  switch (rule.tool) {
    case 'scoop':
      return {
        unit: 'mg',
        amount: portionMg(
          scoopVolumeMl(rule.number),
          densityGPerMl(rule.gPerCup, 1, 'cup'),
          rule.level,
        ),
      }
    case 'tongs':
      return { unit: 'mg', amount: Math.round(rule.grams * 1000) }
    case 'piece':
      return { unit: 'piece', amount: rule.pieces }
    case 'cup':
      return { unit: 'piece', amount: 1 }
  }
}

export const portionsOf = (station: StationDocument): Record<string, Portion> =>
  Object.fromEntries(station.components.map((one) => [one.id, portionOf(one)]))
