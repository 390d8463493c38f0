/**
 * The station document as it is read from a file or the store. What it says is checked here once;
 * everything behind it works on the inferred types.
 */
import { z } from 'zod'
import type { DocumentProblem } from '#lib/station/document-problem.ts'
import { upgraded } from '#lib/station/shapes/older-documents.ts'
import { type StationShape, stationShape } from '#lib/station/shapes/station-parts-schema.ts'
import { wrongBells } from '#lib/station/wrong-bells.ts'
import { wrongDay } from '#lib/station/wrong-day.ts'
import { wrongKitchen } from '#lib/station/wrong-kitchen.ts'
import { wrongLabels } from '#lib/station/wrong-labels.ts'
import { wrongMenu } from '#lib/station/wrong-menu.ts'

/** All that its parts don't know or contradict of each other; none where nothing is wrong. */
const wrongIn = (document: StationShape): readonly DocumentProblem[] => [
  ...wrongMenu(document),
  ...wrongKitchen(document),
  ...wrongLabels(document),
  ...wrongDay(document),
  ...wrongBells(document),
]

/**
 * Refuses a document whose parts don't know or contradict each other, in words that name the part.
 * Each issue carries its `DocumentProblem` in `params`: programs go by its code.
 */
export const newestStationSchema = stationShape.superRefine((document, context) => {
  for (const { message, ...problem } of wrongIn(document))
    context.addIssue({ code: 'custom', message, params: { ...problem, message } })
})

/** A document of any known version, as the newest; refuses as the newest does. */
export const stationSchema = z.preprocess(upgraded, newestStationSchema)
