/** How one portion of a component is taken, and the tools that give a level volume. */
import { z } from 'zod'
import { MEASURE_UNITS, SPOODLE_FL_OZ } from '#lib/measure/portion-tools.ts'
import { LADLE_FL_OZ, SCOOP_NUMBER_MAX, SCOOP_NUMBER_MIN } from '#lib/measure/scoops.ts'

const ofVolume = {
  level: z.int().min(1).max(4),
  gPerCup: z.number().min(5).max(500),
  source: z.string().min(3),
}

const scoop = z.strictObject({
  tool: z.literal('scoop'),
  number: z.int().min(SCOOP_NUMBER_MIN).max(SCOOP_NUMBER_MAX),
})
const ladle = z.strictObject({ tool: z.literal('ladle'), flOz: z.literal(LADLE_FL_OZ) })
const spoodle = z.strictObject({ tool: z.literal('spoodle'), flOz: z.literal(SPOODLE_FL_OZ) })
const measure = z.strictObject({
  tool: z.literal('measure'),
  size: z.number().min(0.125).max(4),
  unit: z.enum(MEASURE_UNITS),
})

export const volumeToolSchema = z.discriminatedUnion('tool', [scoop, ladle, spoodle, measure])

const pieces = z.int().min(1).max(12)

export const portionSchema = z.discriminatedUnion('tool', [
  scoop.extend(ofVolume),
  ladle.extend(ofVolume),
  spoodle.extend(ofVolume),
  measure.extend(ofVolume),
  z.strictObject({
    tool: z.literal('tongs'),
    grams: z.number().min(1).max(500),
    source: z.string().min(3),
  }),
  z.strictObject({ tool: z.literal('tongs-pieces'), pieces }),
  z.strictObject({ tool: z.literal('piece'), pieces }),
  /** A lidded cup that was filled before, counted whole. */
  z.strictObject({ tool: z.literal('cup'), flOz: z.number().min(0.5).max(8) }),
  z.strictObject({
    tool: z.literal('bottle'),
    squeezes: z.int().min(1).max(12),
    /** What so many squeezes weighed when the station tried it. */
    weighed: z.strictObject({
      squeezes: z.int().min(1).max(100),
      grams: z.number().min(1).max(5_000),
    }),
  }),
])
