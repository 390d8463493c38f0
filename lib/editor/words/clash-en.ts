/** What two people said of one row at the same time, field by field, in English. */

import type { Change } from '#lib/editor/change.ts'
import { isRecord, type Json } from '#lib/editor/draft.ts'
import { fieldName } from '#lib/editor/words/fields-en.ts'
import { sayCents } from '#lib/words/amounts-en.ts'

const MOST_SIGNS = 120

const startingWith = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

const said = (field: string, value: Json | undefined): string => {
  if (value === null || value === undefined || value === '') return 'not said'
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (typeof value === 'number') return /Cents$/.test(field) ? sayCents(value) : String(value)
  if (typeof value === 'string') return value
  if (!isRecord(value)) {
    const all = (value as readonly Json[]).map((one) => said(field, one))
    return all.length === 0 ? 'none' : all.join('; ')
  }
  return Object.entries(value)
    .filter(([key]) => key !== 'id')
    .map(([key, inner]) => `${fieldName(key)} ${said(key, inner)}`)
    .join(', ')
}

const shortened = (text: string): string =>
  text.length > MOST_SIGNS ? `${text.slice(0, MOST_SIGNS - 1)}…` : text

/**
 * One thing that two people said otherwise: "Price: yours 8.00, theirs 7.50".
 *
 * @param change from theirs to one's own
 */
export const sayClash = (change: Change): string => {
  switch (change.what) {
    case 'added':
      return 'Theirs: taken away. Yours: it stays.'
    case 'removed':
      return 'Yours: taken away. Theirs: it stays.'
    case 'moved':
      return 'It has another place in yours.'
    case 'changed': {
      const { field, from, to } = change
      const [mine, theirs] = [to, from].map((value) => shortened(said(field, value)))
      return `${startingWith(fieldName(field))}: yours ${mine}, theirs ${theirs}`
    }
  }
}
