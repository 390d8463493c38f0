/** The bytes of a table as text: only what they say themselves, or somebody says of them, is believed. */

/** What old spreadsheets save. */
export const CHOSEN_ENCODINGS = ['windows-1252'] as const
export type ChosenEncoding = (typeof CHOSEN_ENCODINGS)[number]

export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | ChosenEncoding

export type BytesProblem =
  | 'empty'
  /** Neither UTF-8 nor marked as UTF-16: somebody has to say what it is. */
  | 'unknown-encoding'
  /** A workbook or a picture. */
  | 'no-text'

export type BytesRead =
  | { readonly text: string; readonly encoding: Encoding }
  | { readonly why: BytesProblem }

/** Byte order marks: The Unicode Standard, section 23.8. TextDecoder takes them out itself. */
const MARKS: readonly (readonly [Encoding, readonly number[]])[] = [
  ['utf-8', [0xef, 0xbb, 0xbf]],
  ['utf-16le', [0xff, 0xfe]],
  ['utf-16be', [0xfe, 0xff]],
]

/**
 * Bytes 80 to 9F: WHATWG Encoding Standard, index windows-1252. Node's TextDecoder reads Latin-1 for
 * it (Node 20 and 22), so that a euro sign would come out as a control sign.
 */
const HIGH = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ'

const fromWindows = (bytes: Uint8Array): string =>
  Array.from(bytes, (byte) =>
    byte >= 0x80 && byte <= 0x9f ? HIGH.charAt(byte - 0x80) : String.fromCharCode(byte),
  ).join('')

const decoded = (bytes: Uint8Array, encoding: Encoding): string | null => {
  if (encoding === 'windows-1252') return fromWindows(bytes)
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes)
  } catch {
    return null
  }
}

/** No table has one: a workbook, a picture, or UTF-16 without its mark. */
const NUL = '\u0000'

/** @param chosen what somebody says the bytes are; a mark in them says it better */
export const textOf = (bytes: Uint8Array, chosen: ChosenEncoding | null): BytesRead => {
  if (bytes.length === 0) return { why: 'empty' }
  const marked = MARKS.find(([, mark]) => mark.every((byte, place) => bytes[place] === byte))?.[0]
  const encoding = marked ?? chosen ?? 'utf-8'
  const text = decoded(bytes, encoding)
  if (text === null) {
    if (bytes.includes(0)) return { why: 'no-text' }
    return { why: marked === undefined ? 'unknown-encoding' : 'no-text' }
  }
  if (text.includes(NUL)) return { why: 'no-text' }
  return text.trim() === '' ? { why: 'empty' } : { text, encoding }
}
