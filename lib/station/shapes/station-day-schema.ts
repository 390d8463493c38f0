/** The parts of a station document about temperatures and times, the day, and making again. */
import { z } from 'zod'
import { FOOD_KINDS } from '#lib/safety/cooking.ts'
import { REHEATING_PLACES } from '#lib/safety/reheating.ts'
import { SANITIZERS } from '#lib/safety/sanitizer.ts'
import { SCALES } from '#lib/safety/temperature.ts'
import { limitVariantSchema } from '#lib/station/shapes/limit-schema.ts'
import { idSchema, words } from '#lib/station/shapes/named-schema.ts'
import { volumeToolSchema } from '#lib/station/shapes/portion-schema.ts'

export const clockTime = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/)

export const foodSchema = z.strictObject({
  /**
   * What it is cooked as here; `ready` and `not-cooked` are said, never assumed. null: nobody has
   * said, so that the highest limit holds.
   */
  kind: z.enum([...FOOD_KINDS, 'ready']).nullable(),
  cookedIn: z.enum(['usual', 'microwave']),
  /** A whole roast, which has a hot holding limit of its own. */
  roast: z.boolean(),
  reheatable: z.boolean(),
})

export const remakeSchema = z.strictObject({
  where: words,
  by: words,
  /** Until the first load stands on the line: walk, making and the way back. */
  minutes: z.number().min(1).max(600),
  minutesPerLoad: z.number().min(0).max(600),
  portionsPerLoad: z.int().min(1).max(1_000),
  mostLoads: z.int().min(1).max(20),
})

const strength = z.number().positive().max(10_000)

const sanitizerSchema = z.strictObject({
  kind: z.enum(SANITIZERS),
  everyMin: z.int().min(5).max(480),
  /** What its registered label directs; null: nobody has read it into the document. */
  label: z
    .strictObject({
      leastMgPerL: strength,
      mostMgPerL: strength,
      mostPh: z.number().min(0).max(14).nullable(),
    })
    .refine(({ leastMgPerL, mostMgPerL }) => leastMgPerL <= mostMgPerL, {
      error: 'a label directs no less at most than at least',
    })
    .nullable(),
})

export const safetySchema = z.strictObject({
  /** On which the kitchen's thermometers read. */
  scale: z.enum(SCALES),
  /** What local code says instead of the model code. */
  limits: limitVariantSchema,
  readings: z.strictObject({
    everyMin: z.int().min(5).max(240),
    askBeforeMin: z.int().min(0).max(60),
  }),
  /** A written procedure for time alone was prepared in advance and is on site (3-501.19(A)). */
  timeProcedure: z.boolean(),
  reheatOn: z.array(z.enum(REHEATING_PLACES)),
  /** Where made food waits, and for how long at most. */
  shelf: z.strictObject({
    held: z.enum(['none', 'hot', 'cold']),
    collectWithinMin: z.int().min(1).max(240),
  }),
  /** What is read with a strip; left away: nobody asks. */
  sanitizer: sanitizerSchema.optional(),
})

/** One way that the bell rings, as an early-release day. */
const bellSchema = z.strictObject({
  id: idSchema,
  name: words,
  periods: z
    .array(z.strictObject({ id: idSchema, name: words, from: clockTime, to: clockTime }))
    .max(20),
})

/** Who is there in a period, by initials: no name is kept. */
const crewSchema = z.strictObject({
  bell: idSchema,
  period: idSchema,
  initials: z.string().trim().min(1).max(4),
  /** A certified food protection manager (2-102.12). */
  certified: z.boolean(),
})

export const daySchema = z.strictObject({
  closes: clockTime.nullable(),
  rushes: z.array(z.strictObject({ from: clockTime, to: clockTime })).max(20),
  assemblers: z.int().min(1).max(20),
  /** When guests come in, and when the last of them may. */
  doors: z.strictObject({ open: clockTime, close: clockTime }).optional(),
  bells: z.array(bellSchema).max(20).optional(),
  crew: z.array(crewSchema).max(200).optional(),
  /** The crew eats what is left over, as one of the day's meals. */
  crewMeal: z.boolean().optional(),
})

export const toolSchema = z.strictObject({
  id: z.string().regex(/^[a-z][a-z0-9-]{0,39}$/),
  name: words,
  tool: volumeToolSchema,
  /** The component whose own it is; null for one that lies by. */
  usualFor: z.string().min(1).max(40).nullable(),
})
