/** A number as it is typed on a pad, and what stands on its display. */

/** Keys of the pad: digits, a point, a minus, and taking the last one back. */
export type PadKey = '0' | '1' | '2' | '3' | '4' | '5' | '6' | '7' | '8' | '9' | '.' | '-' | 'back'

const MOST_DIGITS = 5

/** What stands on the display after a key: one point, and no more than `decimals` after it. */
export const typed = (text: string, key: PadKey, decimals = 1): string => {
  if (key === 'back') return text.slice(0, -1)
  if (key === '-') return text.startsWith('-') ? text.slice(1) : `-${text}`
  if (key === '.')
    return text.includes('.') || decimals === 0
      ? text
      : `${text === '' || text === '-' ? `${text}0` : text}.`
  const [whole = '', after] = text.split('.')
  if (after !== undefined) return after.length >= decimals ? text : text + key
  const digits = whole.replace('-', '')
  if (digits === '0') return `${whole.slice(0, -1)}${key}`
  return digits.length >= MOST_DIGITS ? text : text + key
}

/** The number that stands on the display in steps of a tenth; null while there is none. */
export const tenthsOf = (text: string): number | null => {
  if (!/^-?\d+(\.\d?)?$/.test(text)) return null
  return Math.round(Number(text) * 10)
}

/** The number on the display as it is; null while there is none. */
export const numberOf = (text: string): number | null =>
  /^-?\d+(\.\d*)?$/.test(text) ? Number(text) : null
