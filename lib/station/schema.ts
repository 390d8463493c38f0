/**
 * The station document as it is read from a file or the store. What it says is checked here once;
 * everything behind it works on the inferred types.
 */
import { z } from 'zod'
import { upgraded } from '#lib/station/shapes/older-documents.ts'
import { stationShape } from '#lib/station/shapes/station-parts-schema.ts'
import { wrongDay } from '#lib/station/wrong-day.ts'
import { wrongKitchen } from '#lib/station/wrong-kitchen.ts'
import { wrongMenu } from '#lib/station/wrong-menu.ts'

/** Refuses a document whose parts don't know or contradict each other, in words that name the part. */
export const newestStationSchema = stationShape.superRefine((document, context) => {
  for (const message of [...wrongMenu(document), ...wrongKitchen(document), ...wrongDay(document)])
    context.addIssue({ code: 'custom', message })
})

/** A document of any known version, as the newest; refuses as the newest does. */
export const stationSchema = z.preprocess(upgraded, newestStationSchema)
