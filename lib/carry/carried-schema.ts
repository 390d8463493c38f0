/** The shape of a file that carries a station to another laptop: FORMAT.md tells it. */
import { z } from 'zod'
import { newestStationSchema } from '#lib/station/schema.ts'

export const CARRIED_FORMAT = 'level-scoop/carried-station'
export const CARRIED_VERSION = 1

const sha256 = z.string().regex(/^[0-9a-f]{64}$/)

export const PICTURE_TYPES = ['image/jpeg', 'image/webp', 'image/png'] as const

const pictureSchema = z.strictObject({
  /** Of its bytes; a label names it by this. */
  sha256,
  type: z.enum(PICTURE_TYPES),
  base64: z.base64().min(4),
})

export type CarriedPicture = z.infer<typeof pictureSchema>

const pictures = z.array(pictureSchema).max(1_000)

const shape = {
  format: z.literal(CARRIED_FORMAT),
  version: z.literal(CARRIED_VERSION),
  /** Of the canonical JSON of `{ document, pictures }`. */
  sha256,
  pictures,
}

/** The station in it is any version's; it is parsed for itself. */
export const envelopeSchema = z.strictObject({ ...shape, document: z.unknown() })

/** What is told of any file before the rest of it is believed. */
export const headSchema = z.looseObject({
  format: z.literal(CARRIED_FORMAT),
  version: z.int().min(1),
})

/** What a station in it tells of itself before the rest. */
export const documentHeadSchema = z.looseObject({ version: z.int().min(1) })

const carriedSchema = z.strictObject({ ...shape, document: newestStationSchema })

/**
 * A JSON Schema (draft 2020-12) of the file, as a program elsewhere writes it. What parts of a
 * station say of each other, such as that a pan holds a component that exists, no such schema can say.
 */
export const carriedJsonSchema = (): object =>
  z.toJSONSchema(carriedSchema, { io: 'input', unrepresentable: 'any' })
