/** A code while it is typed. */
import { CODE_LENGTH, CODE_LETTERS } from '#lib/access/code.ts'

/** What was typed, pasted or scanned so far, without all that no code has; at most a code's length. */
export const codeSoFar = (typed: string): string =>
  [...typed.normalize('NFKC').toUpperCase()]
    .filter((one) => CODE_LETTERS.includes(one))
    .slice(0, CODE_LENGTH)
    .join('')

/** What stands behind the # of an address, as it was meant; as it stands where it can't be read. */
export const inFragment = (hash: string): string => {
  const typed = hash.replace(/^#/, '')
  try {
    return decodeURIComponent(typed)
  } catch {
    return typed
  }
}

/** Signs that are still to be typed. */
export const signsToGo = (code: string): number => CODE_LENGTH - code.length

/** Every place of a code with its sign, '' where none is yet, in groups of four. */
export const codePlaces = (code: string): readonly (readonly string[])[] => {
  const places = Array.from({ length: CODE_LENGTH }, (_, place) => code[place] ?? '')
  return [places.slice(0, CODE_LENGTH / 2), places.slice(CODE_LENGTH / 2)]
}
