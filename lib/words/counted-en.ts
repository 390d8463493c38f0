/** Lists, numbers and plurals in English, by Intl. */

/** US English sets a comma before the last of a list; short lines on small screens go without. */
const LISTS = {
  and: new Intl.ListFormat('en-GB', { type: 'conjunction' }),
  or: new Intl.ListFormat('en-GB', { type: 'disjunction' }),
} as const

const NUMBER = new Intl.NumberFormat('en-US')
const PLURAL = new Intl.PluralRules('en-US')

/** "rice, beans and pita"; '' of none. */
export const list = (names: readonly string[], word: 'and' | 'or'): string =>
  LISTS[word].format(names)

/** The word for so many: `one` of exactly one, `many` of others. */
export const formOf = (count: number, one: string, many: string): string =>
  PLURAL.select(count) === 'one' ? one : many

/** "1 portion", "54 portions", "1,200 portions". Throws nothing; a count below zero keeps its minus. */
export const counted = (count: number, one: string, many: string): string =>
  `${NUMBER.format(count)} ${formOf(count, one, many)}`
