/** What the document's schema says is wrong, as a code and a value that a sentence can use. */
import type { z } from 'zod'

type Issue = z.core.$ZodIssue

const valueAt = (document: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>(
    (part, step) =>
      typeof part === 'object' && part !== null ? Reflect.get(part, step) : undefined,
    document,
  )

const SIZES = {
  string: { big: 'too-long', small: 'empty' },
  array: { big: 'too-many', small: 'too-few' },
} as const

const sizes = (origin: string) =>
  origin === 'string' || origin === 'array'
    ? SIZES[origin]
    : ({ big: 'too-much', small: 'too-little' } as const)

const lastOf = (path: readonly PropertyKey[]): string => String(path.at(-1) ?? '')

/** Of a scoop, ladle, spoodle or measure: without it a portion has no weight. */
const DENSITY = 'gPerCup'

const codeOfValue = (issue: Issue, isThere: boolean): string => {
  if (!isThere) return lastOf(issue.path) === DENSITY ? 'no-density' : 'missing'
  return issue.code === 'invalid_type' ? 'wrong-form' : 'no-such-choice'
}

interface Coded {
  readonly code: string
  readonly most?: number
  readonly least?: number
}

/** A check of one field that the schema makes in words only. */
const codeOfCheck = (path: readonly PropertyKey[]): string =>
  lastOf(path) === 'timeZone' ? 'no-such-time-zone' : 'wrong-form'

/** One code for what a schema's issue says of a field, and the limit that it names. */
export const issueCode = (issue: Issue, document: unknown): Coded => {
  switch (issue.code) {
    case 'custom':
      return { code: codeOfCheck(issue.path) }
    case 'too_big':
      return { code: sizes(issue.origin).big, most: Number(issue.maximum) }
    case 'too_small':
      return { code: sizes(issue.origin).small, least: Number(issue.minimum) }
    case 'invalid_type':
    case 'invalid_value':
    case 'invalid_union':
      return { code: codeOfValue(issue, valueAt(document, issue.path) !== undefined) }
    case 'unrecognized_keys':
      return { code: 'no-such-field' }
    default:
      return { code: 'wrong-form' }
  }
}
