/** Fields that commands about food share. What they may mean is decided, not parsed. */
import { z } from 'zod'
import { SCALES } from '#lib/safety/temperature.ts'

/** Epoch milliseconds, as somebody tells it. */
export const momentField = z.int().min(0).max(8_640_000_000_000_000)

/**
 * Of who did it: kept apart from the log, as a guest's name is. Without them a reading doesn't count
 * and nothing is signed off.
 */
export const initialsField = z.string().trim().min(1).max(6).optional()

const reading = {
  /** Whole tenths of a degree, as the thermometer shows it: 1655 is 165.5. */
  tenths: z.int(),
  scale: z.enum(SCALES),
  probe: z.string().trim().max(40).nullable(),
  where: z.enum(['middle-stirred', 'thickest-part', 'surface']),
  /** When it was taken; now where left away. */
  at: momentField.optional(),
  /** It was asked whether the other scale was meant, and it wasn't. */
  scaleConfirmed: z.boolean().optional(),
  /** The probe was washed, rinsed and sanitized since the food before; unknown where left away. */
  cleaned: z.boolean().optional(),
}

export const readingField = z.strictObject(reading)

export const heatReadingField = z.strictObject({
  ...reading,
  /** Seconds for which it was held there; none where left away. */
  heldSeconds: z.int().min(0).max(86_400).nullable().optional(),
  /** Seconds for which it stood covered afterwards. */
  stoodSeconds: z.int().min(0).max(86_400).nullable().optional(),
})

export type GivenReading = z.infer<typeof readingField>
export type GivenHeatReading = z.infer<typeof heatReadingField>

/** A civil date that there is. */
export const dayField = z.iso.date()

export const dateFields = {
  /** The civil day that counts as day 1: when it was prepared, or its pack was opened. */
  preparedOn: dayField.optional(),
  /** The maker's use-by date; of made food the earliest of what went in. */
  useBy: dayField.optional(),
  /** Put into the freezer, and taken out to thaw: the days between don't count. */
  freezing: z.strictObject({ frozenOn: dayField, thawedOn: dayField }).optional(),
}
