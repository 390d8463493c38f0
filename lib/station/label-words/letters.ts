/** The letters of a text as they are compared, each with its place in the text. */

export interface Letters {
  /**
   * Lower-case letters without accents. Between words one character or more: `-` may join or part
   * (a hyphen, also at the end of a line), a space parts, a line break parts or wraps, `¶` is an
   * empty line; punctuation is kept, other signs and figures are `|`.
   */
  readonly text: string
  /** By each character of `text`: where it starts in what was given, and where it ends. */
  readonly starts: readonly number[]
  readonly ends: readonly number[]
}

/** Not seen in print: soft hyphens, joiners and marks of direction. */
const UNSEEN =
  /\u00ad|\u034f|\u061c|\u180e|[\u200b-\u200f]|[\u202a-\u202e]|[\u2060-\u2064]|[\ufe00-\ufe0f]|\ufeff/
const JOINED: Readonly<Record<string, string>> = {
  æ: 'ae',
  œ: 'oe',
  ø: 'o',
  ß: 'ss',
  ł: 'l',
  ı: 'i',
}
const HYPHEN = /^[-\u2010\u2011]$/
const APOSTROPHE = /^['\u2018\u2019\u02bc\u00b4`]$/
/** Marks of footnotes and trade marks part words and say nothing. */
const NOTE = /^[*†‡®™©\u00b9\u00b2\u00b3\u2070-\u2079_]$/
const KEPT = /^[,.;:()[\]{}/%!?]$/

/** @returns letters of one character as they are compared; empty: it is no letter. */
const lettersOf = (sign: string): string => {
  const plain = sign.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase()
  const joined = [...plain].map((one) => JOINED[one] ?? one).join('')
  return /^[a-z]+$/.test(joined) ? joined : ''
}

const isSpace = (sign: string): boolean => /^\s$/.test(sign)

/** What lies between two words, or before the first, as it is compared. */
const gapOf = (signs: readonly string[], isWithin: boolean): string => {
  const seen = signs.filter((one) => !UNSEEN.test(one)).map((one) => (NOTE.test(one) ? ' ' : one))
  const [first = '', ...rest] = seen
  if (seen.length === 0) return ''
  if (seen.length === 1 && APOSTROPHE.test(first)) return isWithin ? '' : '|'
  const bare = APOSTROPHE.test(first) && rest.every(isSpace) ? rest : seen
  const isBroken = bare.filter((one) => one === '\n').length > 1
  if (bare.every(isSpace)) return isBroken ? '¶' : bare.includes('\n') ? '\n' : ' '
  if (HYPHEN.test(first) && isWithin && rest.every(isSpace)) return isBroken ? '¶' : '-'
  const signsOf = bare.flatMap((one, place) => {
    if (isSpace(one) || HYPHEN.test(one)) return []
    const isPoint =
      one !== '.' || isSpace(bare[place + 1] ?? ' ') || /[)\]]/.test(bare[place + 1] ?? '')
    return KEPT.test(one) && isPoint ? [one] : ['|']
  })
  const line = isBroken ? '¶' : bare.includes('\n') ? '\n' : ''
  const isSuspended = HYPHEN.test(first) && isWithin
  return `${isSuspended ? '-' : ''}${signsOf.join('') || '|'}${line}`
}

/** @param text what stands on a label, as it was typed or pasted */
export const lettersIn = (text: string): Letters => {
  const out = { text: '', starts: [] as number[], ends: [] as number[] }
  const add = (letters: string, start: number, end: number) => {
    for (const letter of letters) {
      out.text += letter
      out.starts.push(start)
      out.ends.push(end)
    }
  }
  let gap: string[] = []
  let gapStart = 0
  const close = (end: number) => {
    add(gapOf(gap, out.text !== ''), gapStart, end)
    gap = []
  }
  let at = 0
  for (const sign of text
    .replaceAll('\r\n', ' \n')
    .replaceAll('\r', '\n')
    .replaceAll('\u2028', '\n')) {
    const letters = lettersOf(sign)
    if (sign === '&' || sign === '＆') {
      if (gap.length === 0) gapStart = at
      gap.push(' ')
      close(at)
      add('and', at, at + sign.length)
      gap = [' ']
      gapStart = at + sign.length
    } else if (letters === '') {
      if (gap.length === 0) gapStart = at
      gap.push(sign)
    } else {
      close(at)
      add(letters, at, at + sign.length)
    }
    at += sign.length
  }
  close(at)
  return out
}
