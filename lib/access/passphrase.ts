/** What a passphrase and an adult's name may be. */
import { COMMON } from '#lib/access/common-passphrases.ts'

/** Characters after NFKC normalisation (NIST SP 800-63B: at least 8, spaces and all of Unicode). */
export const FEWEST_CHARACTERS = 8
export const MOST_CHARACTERS = 200

/** Characters of the name of an adult or a device. */
export const MOST_NAME = 40

/** The one form in which keyboards and systems that compose letters differently agree. */
export const passphraseForm = (passphrase: string): string => passphrase.normalize('NFKC')

const lettersOf = (text: string): string =>
  text
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]/gu, '')

/** Of one sign or two over and over, or a run along a keyboard or an alphabet. */
const isPlain = (letters: string): boolean => {
  if (new Set(letters).size < 3) return true
  const runs = ['abcdefghijklmnopqrstuvwxyz', '01234567890', 'qwertyuiopasdfghjklzxcvbnm']
  return runs.some((run) => run.includes(letters) || [...run].reverse().join('').includes(letters))
}

/**
 * Why a new passphrase won't do; null where it will. A common one is one also with other signs and
 * capitals, and with figures after it.
 */
export const passphraseProblem = (
  passphrase: string,
): 'too-short' | 'too-long' | 'too-common' | null => {
  const { length } = [...passphraseForm(passphrase)]
  if (length < FEWEST_CHARACTERS) return 'too-short'
  if (length > MOST_CHARACTERS) return 'too-long'
  const letters = lettersOf(passphrase)
  // Signs alone are rare enough.
  if (letters === '') return new Set(passphrase).size < 3 ? 'too-common' : null
  const word = letters.replace(/\p{N}+$/u, '')
  const isCommon = COMMON.has(letters) || COMMON.has(word)
  return isCommon || isPlain(letters) ? 'too-common' : null
}

/** A name as it is kept, with single spaces; null where there is none, or too much of it. */
export const nameKept = (name: string): string | null => {
  const kept = name.normalize('NFKC').replace(/\p{C}/gu, ' ').replace(/\s+/g, ' ').trim()
  return kept === '' || [...kept].length > MOST_NAME ? null : kept
}

/** What two names share that are taken for one. */
export const nameKey = (name: string): string => (nameKept(name) ?? '').toLowerCase()
