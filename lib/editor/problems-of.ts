/** All that is wrong with a draft, by the station document's own checks, told at the row's field. */
import type { z } from 'zod'
import { completed, STAND_IN, type WrongFields } from '#lib/editor/completed.ts'
import { type Draft, type EntityKey, keyOf, namedBy, SINGLES } from '#lib/editor/draft.ts'
import { FIELDS } from '#lib/editor/fields.ts'
import { issueCode } from '#lib/editor/issue-code.ts'
import { ownProblems } from '#lib/editor/own-problems.ts'
import type { Problem } from '#lib/editor/problem.ts'
import { type DraftLabels, type Laid, layDocument } from '#lib/editor/raw-document.ts'
import type { DocumentProblem } from '#lib/station/document-problem.ts'
import { newestStationSchema } from '#lib/station/schema.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

type Issue = z.core.$ZodIssue

/** The row that a path of the document is in, and the rest of the path; the house where it is no part's. */
const placeOf = (
  { places }: Laid,
  path: readonly PropertyKey[],
): { readonly key: EntityKey; readonly field: string | null } => {
  for (let length = path.length; length > 0; length -= 1) {
    const key = places.get(path.slice(0, length).map(String).join('.'))
    if (key === undefined) continue
    const rest = path.slice(length).map(String).join('.')
    return { key, field: rest === '' ? null : rest }
  }
  return { key: 'house', field: path.length === 0 ? null : path.map(String).join('.') }
}

/** The document's own problems say where they are; what is the house's there lies in three rows here. */
const fromDocument = ({ code, entity, id, field, named }: DocumentProblem): Problem => {
  const more = named.length === 0 ? {} : { named }
  if (entity !== 'house') return { code, entity, id: id ?? entity, field, ...more }
  // Of the house's own lists only bells have ids.
  const place = id === null ? field : 'bells'
  const single = SINGLES.find((one) => FIELDS[one].includes(place)) ?? 'house'
  return { code, entity: single, id: single, field: place, ...more }
}

const isOfDocument = (params: unknown): params is DocumentProblem =>
  typeof params === 'object' && params !== null && 'entity' in params && 'code' in params

const problemOf = (laid: Laid, issue: Issue, document: unknown): Problem => {
  if (issue.code === 'custom' && isOfDocument(issue.params)) return fromDocument(issue.params)
  const { key, field } = placeOf(laid, issue.path)
  return { ...issueCode(issue, document), ...namedBy(key), field }
}

const topOf = (field: string | null): string => (field ?? '').replace(/\..*$/s, '')

const wrongFields = (problems: readonly Problem[]): WrongFields => {
  const wrong = new Map<EntityKey, Set<string>>()
  for (const { entity, id, field } of problems) {
    const key = keyOf(entity, id)
    wrong.set(key, (wrong.get(key) ?? new Set()).add(topOf(field)))
  }
  return wrong
}

/** What the parts say of each other, where some of them can't be read yet. */
const amongTheRest = (laid: Laid, told: readonly Problem[]): readonly Problem[] => {
  const wrong = wrongFields(told)
  const document = completed(laid, wrong)
  const parsed = newestStationSchema.safeParse(document)
  const issues = parsed.success ? [] : parsed.error.issues
  return (
    issues
      .filter(({ code }) => code === 'custom')
      .map((issue) => problemOf(laid, issue, document))
      // What a stand-in says beside the rest of its row isn't the row's.
      .filter(({ entity, id }) => !wrong.has(keyOf(entity, id)) && !id.startsWith(STAND_IN))
  )
}

export type Assembled =
  | { readonly ok: true; readonly document: StationDocument }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** The document that a draft says, with the house's labels; or all that is wrong with it. */
export const assembleDocument = (draft: Draft, labels: DraftLabels): Assembled => {
  const laid = layDocument(draft, labels)
  const parsed = newestStationSchema.safeParse(laid.document)
  const own = ownProblems(draft)
  if (parsed.success)
    return own.length === 0 ? { ok: true, document: parsed.data } : { ok: false, problems: own }
  const { issues } = parsed.error
  const told = issues.map((issue) => problemOf(laid, issue, laid.document))
  const isShape = issues.some(({ code }) => code !== 'custom')
  return { ok: false, problems: [...own, ...told, ...(isShape ? amongTheRest(laid, told) : [])] }
}

export const problemsOf = (draft: Draft, labels: DraftLabels): readonly Problem[] => {
  const assembled = assembleDocument(draft, labels)
  return assembled.ok ? [] : assembled.problems
}
