/** Codes that are read off one screen and typed on another: a device's, and the terminal's secret. */

/** No two that are taken for each other in a hurry: without 0 O, 1 I L, 2 Z, 5 S, 8 B. */
export const CODE_LETTERS = 'ACDEFGHJKMNPQRTUVWXY34679'

/** 25 letters to the 8th: 37 bits for ten minutes. */
export const CODE_LENGTH = 8

/** 25 letters to the 16th: 74 bits for as long as the server runs. */
export const SECRET_LENGTH = 16

const GROUP = 4

/** Bytes from here on would make some letters likelier than others. */
const FAIR = 256 - (256 % CODE_LETTERS.length)

/**
 * A code out of random bytes; those that would favour a letter are passed over.
 * @param random gives so many random bytes; asked again until there are enough
 */
export const codeFrom = (random: (bytes: number) => Uint8Array, length: number): string => {
  let code = ''
  while (code.length < length)
    for (const byte of random(length))
      if (byte < FAIR && code.length < length) code += CODE_LETTERS[byte % CODE_LETTERS.length]
  return code
}

/** In groups of four, as it is shown and typed. */
export const shownCode = (code: string): string =>
  (code.match(new RegExp(`.{1,${GROUP}}`, 'g')) ?? []).join('-')

/**
 * A code as it was meant, however it was typed: small or wide letters, spaces and dashes are no
 * matter. Null where it can't be one of that length.
 */
export const readCode = (typed: string, length: number): string | null => {
  if (typed.length > 4 * length) return null
  const code = typed
    .normalize('NFKC')
    .toUpperCase()
    .replace(/[\s\p{Pd}_.]/gu, '')
  const isOne = code.length === length && [...code].every((one) => CODE_LETTERS.includes(one))
  return isOne ? code : null
}
