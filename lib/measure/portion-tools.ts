import { mlFrom } from '#lib/measure/kitchen-units.ts'
import { densityGPerMl, portionMg } from '#lib/measure/portion.ts'
import { stepsHalfUp } from '#lib/measure/rounding.ts'
import { ladleVolumeMl, scoopVolumeMl } from '#lib/measure/scoops.ts'

/** Sizes of spoodles, solid or with holes: the ladle sizes but the 12. ICN Basics at a Glance. */
export const SPOODLE_FL_OZ = [1, 2, 3, 4, 6, 8] as const

export const MEASURE_UNITS = ['cup', 'tbsp', 'tsp'] as const

export type MeasureUnit = (typeof MEASURE_UNITS)[number]

/** A tool that gives a level volume. Stamped ounces are fluid ounces. */
export type VolumeTool =
  | { readonly tool: 'scoop'; readonly number: number }
  | { readonly tool: 'ladle'; readonly flOz: number }
  | { readonly tool: 'spoodle'; readonly flOz: number }
  /** A measuring cup or spoon of a size, as 0.25 cup. */
  | { readonly tool: 'measure'; readonly size: number; readonly unit: MeasureUnit }

/** How one portion is taken. Densities are grams per level cup, as household weights state them. */
export type ToolPortion =
  | (VolumeTool & { readonly level: number; readonly gPerCup: number })
  | { readonly tool: 'tongs'; readonly grams: number }
  | { readonly tool: 'tongs-pieces'; readonly pieces: number }
  | { readonly tool: 'piece'; readonly pieces: number }
  /** A lidded cup that was filled before, counted whole. */
  | { readonly tool: 'lidded-cup' }
  /** A squeeze bottle: what so many squeezes weighed when the station tried it. */
  | {
      readonly tool: 'bottle'
      readonly squeezes: number
      readonly weighed: { readonly squeezes: number; readonly grams: number }
    }

export interface ToolAmount {
  readonly unit: 'mg' | 'piece'
  readonly amount: number
}

function assertCount(count: number, what: string): void {
  if (!Number.isInteger(count) || count < 1)
    throw new RangeError(`${what} is a whole number from 1`)
}

/**
 * Millilitres of one level measure of a tool, not rounded. Throws RangeError for a scoop number
 * outside 4 to 100, a ladle or spoodle that isn't sold, and a size of 0 or less.
 */
export function toolVolumeMl(tool: VolumeTool): number {
  switch (tool.tool) {
    case 'scoop':
      return scoopVolumeMl(tool.number)
    case 'ladle':
      return ladleVolumeMl(tool.flOz)
    case 'spoodle':
      if (!SPOODLE_FL_OZ.some((size) => size === tool.flOz))
        throw new RangeError('a spoodle holds 1, 2, 3, 4, 6 or 8 fl oz')
      return mlFrom(tool.flOz, 'flOz')
    case 'measure':
      if (!(tool.size > 0 && tool.size < Infinity))
        throw new RangeError('a measure holds more than nothing')
      return mlFrom(tool.size, tool.unit)
  }
}

/**
 * What one portion takes out of a pan: whole milligrams, multiplied first and rounded once with
 * halves up, or whole pieces. Throws RangeError for counts that aren't whole and at least 1, for
 * weights and densities of 0 or less, and for portions that round to nothing.
 */
export function toolAmount(portion: ToolPortion): ToolAmount {
  const weighed = (mg: number): ToolAmount => {
    if (!(mg >= 1)) throw new RangeError('a portion is at least a milligram')
    return { unit: 'mg', amount: mg }
  }
  switch (portion.tool) {
    case 'tongs':
      return weighed(stepsHalfUp(portion.grams * 1000, 1))
    case 'tongs-pieces':
    case 'piece':
      assertCount(portion.pieces, 'a count of pieces')
      return { unit: 'piece', amount: portion.pieces }
    case 'lidded-cup':
      return { unit: 'piece', amount: 1 }
    case 'bottle':
      assertCount(portion.squeezes, 'a count of squeezes')
      assertCount(portion.weighed.squeezes, 'a count of squeezes')
      return weighed(
        stepsHalfUp(
          (portion.weighed.grams * 1000 * portion.squeezes) / portion.weighed.squeezes,
          1,
        ),
      )
    default:
      assertCount(portion.level, 'a count of level measures')
      return weighed(
        portionMg(toolVolumeMl(portion), densityGPerMl(portion.gPerCup, 1, 'cup'), portion.level),
      )
  }
}
