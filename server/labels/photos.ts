/** Pictures of labels: what is kept is made anew of the pixels, small, and called by its own hash. */
import { createHash } from 'node:crypto'
import type { PhotoKept } from '#lib/editor/label-http.ts'
import type { SqliteDatabase } from '#server/store/durable-database.ts'

/** Bytes of what is kept. */
export const MOST_KEPT_BYTES = 300_000

/** A 50-megapixel camera's; opened, one takes 200 MB. */
export const MOST_PIXELS = 50_000_000

/** Of a house: 300 MB. */
const MOST_PHOTOS = 1_000

/** What no label names after so long was never saved with one. */
const UNUSED_MS = 86_400_000

/** Longest side in pixels and JPEG quality, the first that is small enough. Tried by eye on lists of small print. */
const TRIES = [
  [2_000, 80],
  [2_000, 65],
  [1_600, 65],
  [1_600, 50],
  [1_200, 50],
  [900, 45],
  [600, 40],
] as const

export type PhotoProblem =
  | 'not-a-picture'
  | 'too-many-pixels'
  | 'cannot-open'
  | 'no-pictures-here'
  | 'too-many'

export interface Photos {
  /** Makes it anew, upright and without what a camera writes beside it, and keeps that. */
  keep(bytes: Buffer): Promise<PhotoKept | { readonly problem: PhotoProblem }>
  /**
   * Keeps one that another house made so: small, of pixels only, and called by its hash.
   * @returns false where it isn't, or there is no room
   */
  adopt(hash: string, bytes: Uint8Array): boolean
  /** A JPEG; null where none is called so. */
  find(hash: string): Buffer | null
}

type Sharp = typeof import('sharp')['default']

/** On a platform that it isn't built for it isn't installed, and labels are read without pictures. */
const loadSharp = async (): Promise<Sharp | null> => {
  try {
    const { default: sharp } = await import('sharp')
    sharp.cache(false)
    sharp.concurrency(1)
    return sharp
  } catch {
    return null
  }
}

/** By its first bytes: no other kind is given to what opens pictures. */
const kindOf = (bytes: Buffer): 'jpeg' | 'png' | 'webp' | 'heic' | null => {
  const ascii = (from: number, to: number) => bytes.toString('latin1', from, to)
  if (bytes.subarray(0, 3).equals(Buffer.from([0xff, 0xd8, 0xff]))) return 'jpeg'
  if (ascii(0, 8) === '\x89PNG\r\n\x1a\n') return 'png'
  if (ascii(0, 4) === 'RIFF' && ascii(8, 12) === 'WEBP') return 'webp'
  return ascii(4, 8) === 'ftyp' ? 'heic' : null
}

const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')

/** Whether a JPEG has no segment beside its pixels' own but JFIF's: those are where cameras write. */
const isPixelsOnly = (bytes: Buffer): boolean => {
  let at = 2
  while (at + 4 <= bytes.length && bytes[at] === 0xff) {
    const marker = bytes[at + 1] ?? 0
    if (marker === 0xda) return true
    if ((marker > 0xe0 && marker <= 0xef) || marker === 0xfe) return false
    at += 2 + bytes.readUInt16BE(at + 2)
  }
  return false
}

const problemOf = (error: unknown, kind: string): PhotoProblem => {
  const message = error instanceof Error ? error.message : ''
  if (/pixel limit/i.test(message)) return 'too-many-pixels'
  return kind === 'heic' ? 'cannot-open' : 'not-a-picture'
}

interface Made extends PhotoKept {
  readonly body: Buffer
}

const madeAnew = async (sharp: Sharp, bytes: Buffer): Promise<Made> => {
  for (const [side, quality] of TRIES) {
    // What it carries of place, time and camera isn't asked for, so it isn't written.
    const { data, info } = await sharp(bytes, {
      limitInputPixels: MOST_PIXELS,
      failOn: 'error',
      sequentialRead: true,
    })
      .rotate()
      .resize({ width: side, height: side, fit: 'inside', withoutEnlargement: true })
      .flatten({ background: '#ffffff' })
      .jpeg({ quality, mozjpeg: true })
      .timeout({ seconds: 30 })
      .toBuffer({ resolveWithObject: true })
    if (data.length > MOST_KEPT_BYTES) continue
    return {
      hash: sha256(data),
      bytes: data.length,
      width: info.width,
      height: info.height,
      body: data,
    }
  }
  throw new Error('a picture stays too large')
}

/**
 * The pictures of a house, in its file.
 * @param setup.load what opens pictures; null where it doesn't run here
 */
export const createPhotos = (setup: {
  readonly file: SqliteDatabase
  readonly house: string
  /** Epoch milliseconds. */
  readonly now: () => number
  readonly load?: () => Promise<Sharp | null>
}): Photos => {
  const { file, house, now, load = loadSharp } = setup
  const find = file
    .prepare<[string, string], Buffer>('SELECT body FROM photos WHERE house = ? AND hash = ?')
    .pluck()
  const count = file
    .prepare<[string], number>('SELECT count(*) FROM photos WHERE house = ?')
    .pluck()
  const add = file.prepare<[string, string, Buffer, number]>(
    `INSERT INTO photos (house, hash, body, at) VALUES (?, ?, ?, ?)
     ON CONFLICT (house, hash) DO UPDATE SET at = excluded.at`,
  )
  file
    .prepare<[string, number]>(
      `DELETE FROM photos WHERE house = ? AND at < ? AND hash NOT IN
         (SELECT json_extract(body, '$.photo') FROM labels
          WHERE json_extract(body, '$.photo') IS NOT NULL)`,
    )
    .run(house, now() - UNUSED_MS)

  let opener: Promise<Sharp | null> | null = null
  let turn: Promise<unknown> = Promise.resolve()

  const keep = async (bytes: Buffer): ReturnType<Photos['keep']> => {
    const kind = kindOf(bytes)
    if (kind === null) return { problem: 'not-a-picture' }
    opener ??= load()
    const sharp = await opener
    if (sharp === null) return { problem: 'no-pictures-here' }
    if ((count.get(house) ?? 0) >= MOST_PHOTOS) return { problem: 'too-many' }
    try {
      const { body, ...kept } = await madeAnew(sharp, bytes)
      add.run(house, kept.hash, body, now())
      return kept
    } catch (error) {
      return { problem: problemOf(error, kind) }
    }
  }

  return {
    // One at a time: each takes hundreds of megabytes while it is open.
    keep: (bytes) => {
      const mine = turn.then(() => keep(bytes))
      turn = mine.catch(() => undefined)
      return mine
    },
    adopt: (hash, bytes) => {
      const body = Buffer.from(bytes)
      const isOurs =
        body.length <= MOST_KEPT_BYTES &&
        kindOf(body) === 'jpeg' &&
        isPixelsOnly(body) &&
        sha256(body) === hash
      if (!isOurs || (count.get(house) ?? 0) >= MOST_PHOTOS) return false
      add.run(house, hash, body, now())
      return true
    },
    find: (hash) => find.get(house, hash) ?? null,
  }
}
