/** A file that carries a station, read with nothing of it believed before it is checked. */
import { hashOfBytes, sealOf } from '#lib/carry/canonical.ts'
import {
  CARRIED_FORMAT,
  CARRIED_VERSION,
  type CarriedPicture,
  documentHeadSchema,
  envelopeSchema,
  headSchema,
} from '#lib/carry/carried-schema.ts'
import { picturesNamed } from '#lib/carry/pictures-named.ts'
import { stationSchema } from '#lib/station/schema.ts'
import { stationShape } from '#lib/station/shapes/station-parts-schema.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** Bytes of a file: with a hundred pictures of 150 kB in base64. */
export const MOST_FILE_BYTES = 20 * 1_048_576

export type CarriedProblem =
  | { readonly why: 'empty' }
  | { readonly why: 'too-large'; readonly mostBytes: number }
  /** It begins as JSON and breaks off. */
  | { readonly why: 'cut-off' }
  | { readonly why: 'not-json' }
  /** JSON, of something else. */
  | { readonly why: 'other-file' }
  /** Written by a newer program. */
  | { readonly why: 'too-new'; readonly version: number; readonly known: number }
  /** Its parts aren't what the format says. */
  | { readonly why: 'damaged'; readonly at: string }
  /** Not what was written: its hash is another. */
  | { readonly why: 'altered' }
  | { readonly why: 'picture-altered'; readonly sha256: string }
  /** A document that no service takes: what its schema says, ten at most. */
  | { readonly why: 'wrong-station'; readonly messages: readonly string[] }

export interface Carried {
  readonly document: StationDocument
  /** Those that its labels name. */
  readonly pictures: readonly (Omit<CarriedPicture, 'base64'> & { readonly bytes: Uint8Array })[]
}

export type CarriedRead = { readonly carried: Carried } | { readonly problem: CarriedProblem }

const MOST_MESSAGES = 10

const no = (problem: CarriedProblem): CarriedRead => ({ problem })

const parseJson = (text: string): { readonly json: unknown } | null => {
  try {
    return { json: JSON.parse(text) }
  } catch {
    return null
  }
}

const bytesOf = (base64: string): Uint8Array =>
  Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0))

const isCutOff = (text: string): boolean =>
  text.trimStart().startsWith('{') && !text.trimEnd().endsWith('}')

const NEWEST_STATION = stationShape.shape.version.value

/** Versions above those that this program knows; null where it knows them. */
const tooNew = (json: unknown): CarriedProblem | null => {
  const head = headSchema.safeParse(json)
  if (!head.success) return null
  const { version } = head.data
  if (version > CARRIED_VERSION) return { why: 'too-new', version, known: CARRIED_VERSION }
  const document = documentHeadSchema.safeParse(head.data.document)
  return document.success && document.data.version > NEWEST_STATION
    ? { why: 'too-new', version: document.data.version, known: NEWEST_STATION }
    : null
}

const isOurs = (json: unknown): boolean =>
  typeof json === 'object' && json !== null && 'format' in json && json.format === CARRIED_FORMAT

/** Each refusal says what is wrong; nothing is taken of a file that has one. */
export const readCarried = (text: string): CarriedRead => {
  if (text.trim() === '') return no({ why: 'empty' })
  const parsed = parseJson(text)
  if (parsed === null) return no({ why: isCutOff(text) ? 'cut-off' : 'not-json' })
  if (!isOurs(parsed.json)) return no({ why: 'other-file' })
  const newer = tooNew(parsed.json)
  if (newer !== null) return no(newer)
  const envelope = envelopeSchema.safeParse(parsed.json)
  if (!envelope.success)
    return no({ why: 'damaged', at: envelope.error.issues[0]?.path.join('.') ?? '' })
  const { document, pictures, sha256 } = envelope.data
  if (sealOf({ document, pictures }) !== sha256) return no({ why: 'altered' })
  const station = stationSchema.safeParse(document)
  if (!station.success) {
    const messages = station.error.issues
      .slice(0, MOST_MESSAGES)
      .map(({ path, message }) => (path.length === 0 ? message : `${path.join('.')}: ${message}`))
    return no({ why: 'wrong-station', messages })
  }
  const read = pictures.map(({ base64, ...one }) => ({ ...one, bytes: bytesOf(base64) }))
  const other = read.find((one) => hashOfBytes(one.bytes) !== one.sha256)
  if (other) return no({ why: 'picture-altered', sha256: other.sha256 })
  const named = new Set(picturesNamed(station.data))
  return {
    carried: {
      document: station.data,
      pictures: read.filter((one) => named.has(one.sha256)),
    },
  }
}
