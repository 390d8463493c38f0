/** Limits that local code sets instead of the model code's. What isn't named stays as it is. */
import { z } from 'zod'
import { type LocalVariant, MODEL_CODE } from '#lib/safety/limits.ts'

const written = {
  document: z.string().min(3).max(120),
  paragraph: z.string().min(1).max(120),
  certainty: z.enum(['seen', 'memory']),
}
const both = z.strictObject({ F: z.int(), C: z.int() })

const temperature = z.strictObject({
  bound: z.enum(['at-least', 'at-most']),
  tenths: both,
  ...written,
})
const heat = z.strictObject({
  combinations: z
    .array(z.strictObject({ tenths: both, seconds: z.int().min(0).max(86_400) }))
    .min(1),
  standSeconds: z.int().min(0).max(86_400),
  ...written,
})
const time = z.strictObject({ withinMs: z.int().min(1), ...written })
const days = z.strictObject({ days: z.int().min(1).max(60), ...written })

/** A limit is set by one of its own kind: a temperature can't stand for a time. */
const shapeOf = (limit: object) => {
  if ('combinations' in limit) return heat
  if ('bound' in limit) return temperature
  return 'days' in limit ? days : time
}

export const limitVariantSchema = z
  .strictObject(
    Object.fromEntries(
      Object.entries(MODEL_CODE).map(([name, limit]) => [name, shapeOf(limit).optional()]),
    ),
  )
  .transform((variant) => variant as LocalVariant)
