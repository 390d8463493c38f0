import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import { configure } from 'safe-stable-stringify'
import { CARRIED_FORMAT, CARRIED_VERSION, type CarriedPicture } from '#lib/carry/carried-schema.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** No file of ours is as deep; what a stranger nests deeper is cut, so that its hash is another. */
const MOST_DEPTH = 64

const stringify = configure({ maximumDepth: MOST_DEPTH })

/**
 * JSON without white space, its keys sorted by code units: of what a station holds the same text as
 * the JSON Canonicalization Scheme (RFC 8785) gives.
 */
export const canonicalJson = (value: unknown): string => stringify(value) ?? 'null'

/** In lower-case hexadecimal. */
export const sealOf = (content: {
  readonly document: unknown
  readonly pictures: unknown
}): string => bytesToHex(sha256(utf8ToBytes(canonicalJson(content))))

export const hashOfBytes = (bytes: Uint8Array): string => bytesToHex(sha256(bytes))

/** The file of a station with its labels, and those of its pictures that are still kept. */
export const carriedFile = (
  document: StationDocument,
  pictures: readonly CarriedPicture[],
): string => {
  const sorted = pictures.toSorted((one, other) => (one.sha256 < other.sha256 ? -1 : 1))
  return canonicalJson({
    format: CARRIED_FORMAT,
    version: CARRIED_VERSION,
    sha256: sealOf({ document, pictures: sorted }),
    document,
    pictures: sorted,
  })
}
