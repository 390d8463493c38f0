/** What is typed into a field as the row keeps it: a value where it is one, else the text itself. */
import { isRecord, type Json, type Row } from '#lib/editor/draft.ts'

export type TypedAs = 'text' | 'whole' | 'number' | 'money' | 'percent' | 'ounces' | 'minutes'

const WHOLE = /^\d{1,9}$/
const DECIMAL = /^\d{0,9}([.,]\d{1,4})?$/
const CENTS = /^\d{0,9}([.,]\d{1,2})?$/

/** "1,000" is a thousand, as on a card; "6,50" and "0,125" are parts. */
const GROUPED = /^[1-9]\d{0,2}(,\d{3})+(?=\.|$)/

const plainly = (text: string): string =>
  text.replace(GROUPED, (grouped) => grouped.replaceAll(',', ''))

const decimal = (text: string, shape: RegExp): number | null =>
  text !== '' && shape.test(text) ? Number(text.replace(',', '.')) : null

/** How many of what is kept are one of what is typed. */
const PER: Readonly<Record<TypedAs, number>> = {
  text: 1,
  whole: 1,
  number: 1,
  money: 100,
  percent: 100,
  ounces: 28_349.523125,
  minutes: 60_000,
}

/** undefined of nothing: there is no answer. What can't be read stays as it was typed. */
export const fromTyped = (text: string, as: TypedAs): Json | undefined => {
  if (as === 'text') return text.trim() === '' ? undefined : text
  const bare = plainly(text.trim().replace(/^[$£€]\s?|\s?%$/, ''))
  if (bare === '') return undefined
  const read =
    as === 'whole'
      ? WHOLE.test(bare)
        ? Number(bare)
        : null
      : decimal(bare, as === 'money' ? CENTS : DECIMAL)
  if (read === null) return text
  const kept = read * PER[as]
  return as === 'number' ? kept : Math.round(kept)
}

const shortest = (value: number, most: number): string => String(Number(value.toFixed(most)))

/** What a row keeps as it is typed; empty where there is no answer. */
export const toTyped = (value: Json | undefined, as: TypedAs): string => {
  if (typeof value === 'string') return value
  if (typeof value !== 'number') return ''
  if (as === 'money') return (value / PER.money).toFixed(2)
  const isPer = as === 'percent' || as === 'ounces' || as === 'minutes'
  return isPer ? shortest(value / PER[as], 2) : shortest(value, 4)
}

const isList = (value: Json | undefined): value is readonly Json[] => Array.isArray(value)

/** What stands at a path within a row, as `portion.gPerCup`; of a list by its number from 0. */
export const valueAt = (row: Row | undefined, path: string): Json | undefined =>
  path
    .split('.')
    .reduce<Json | undefined>(
      (now, key) => (isList(now) ? now[Number(key)] : isRecord(now) ? now[key] : undefined),
      row,
    )

const withAt = (
  now: Json | undefined,
  [key = '', ...inner]: readonly string[],
  value: Json | undefined,
): Row => {
  const { [key]: before, ...rest } = isRecord(now) ? now : {}
  const next = inner.length === 0 ? value : withAt(before, inner, value)
  return next === undefined ? rest : { ...rest, [key]: next }
}

/**
 * Fields of a step that writes a value at a path of records; the rest of what it lies in stays.
 *
 * @param value undefined takes the answer away
 */
export const fieldsWith = (
  row: Row | undefined,
  path: string,
  value: Json | undefined,
): { readonly fields: Row; readonly clear?: readonly string[] } => {
  const [field = '', ...inner] = path.split('.')
  if (inner.length > 0) return { fields: { [field]: withAt(row?.[field], inner, value) } }
  return value === undefined ? { fields: {}, clear: [field] } : { fields: { [field]: value } }
}
