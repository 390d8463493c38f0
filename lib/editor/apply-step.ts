/** One step on a draft, or why it can't be taken. */
import stringify from 'safe-stable-stringify'
import {
  type Draft,
  type EntityKey,
  isSingle,
  type Json,
  type Kind,
  keyOf,
  type Named,
  type Row,
  type Rows,
  rowOf,
  rowsOf,
  textIn,
  textsIn,
} from '#lib/editor/draft.ts'
import { FIELDS } from '#lib/editor/fields.ts'
import { firstFields } from '#lib/editor/first-fields.ts'
import { isProposedShort, proposedShort } from '#lib/editor/ids.ts'
import type { Other, StepRefusal } from '#lib/editor/problem.ts'
import type { Step } from '#lib/editor/step.ts'
import { usersOf } from '#lib/editor/uses.ts'

export type Stepped =
  | { readonly ok: true; readonly draft: Draft }
  | { readonly ok: false; readonly why: StepRefusal; readonly other?: Other }

/** Rows of a draft, and signs of one row as JSON. */
export const MOST_ROWS = 2_000
export const MOST_ROW_SIGNS = 40_000

const ID = /^(?!constructor$)[a-z][a-z0-9-]{0,49}$/

const no = (why: StepRefusal, other?: Other): Stepped =>
  other === undefined ? { ok: false, why } : { ok: false, why, other }

const withRow = (draft: Draft, key: EntityKey, row: Row | undefined): Draft => {
  if (row !== undefined) return { ...draft, rows: { ...draft.rows, [key]: row } }
  const { [key]: _, ...others }: Rows = draft.rows
  return { ...draft, rows: others }
}

const atOf = (row: Row | undefined): number => (typeof row?.at === 'number' ? row.at : 0)

/** Where a new one of its kind stands: behind all others. */
const nextAt = ({ rows }: Draft, kind: Kind): number => {
  let last = -1
  for (const key in rows)
    if (key.startsWith(`${kind}:`)) last = Math.max(last, atOf(rows[key as EntityKey]))
  return 1 + last
}

const put = (draft: Draft, { entity, id, fields, clear = [] }: Step & { do: 'put' }): Stepped => {
  if (isSingle(entity) ? id !== entity : !ID.test(id)) return no('no-id')
  const known = FIELDS[entity]
  if ([...Object.keys(fields), ...clear].some((one) => !known.includes(one)))
    return no('no-such-field')
  const before = rowOf(draft, entity, id)
  const first = before === undefined ? firstFields(entity, fields) : {}
  const isPlaced = isSingle(entity) || before?.at !== undefined
  const at = isPlaced ? {} : { at: nextAt(draft, entity) }
  const row: Row = Object.fromEntries(
    Object.entries<Json>({ ...at, ...first, ...before, ...fields }).filter(
      ([field]) => !clear.includes(field),
    ),
  )
  if (JSON.stringify(row).length > MOST_ROW_SIGNS) return no('too-large')
  if (before === undefined && Object.keys(draft.rows).length >= MOST_ROWS) return no('too-large')
  return { ok: true, draft: withRow(draft, keyOf(entity, id), row) }
}

/** What a component touched, and whose own scoop one was, go with it. */
const withoutTraces = (draft: Draft, component: string): Draft => {
  let left = draft
  for (const { id, row } of rowsOf(draft, 'contact')) {
    const components = textsIn(row, 'components')
    if (!components.includes(component)) continue
    const others = components.filter((one) => one !== component)
    const key = keyOf('contact', id)
    left = withRow(left, key, others.length < 2 ? undefined : { ...row, components: others })
  }
  for (const { id, row } of rowsOf(draft, 'tool'))
    if (textIn(row, 'usualFor') === component)
      left = withRow(left, keyOf('tool', id), { ...row, usualFor: null })
  return left
}

const remove = (draft: Draft, { entity, id }: Step & { do: 'remove' }): Stepped => {
  if (rowOf(draft, entity, id) === undefined) return no('no-such-row')
  const [user] = usersOf(draft, entity, id)
  if (user) return no('in-use', user)
  const left = entity === 'component' ? withoutTraces(draft, id) : draft
  return { ok: true, draft: withRow(left, keyOf(entity, id), undefined) }
}

/** Numbers between two have an end: then all of the list are numbered anew. */
const renumbered = (draft: Draft, kind: Kind, list: readonly Named[]): Draft =>
  list.reduce(
    (sofar, { id, row }, at) =>
      row.at === at ? sofar : withRow(sofar, keyOf(kind, id), { ...row, at }),
    draft,
  )

const move = (draft: Draft, { entity, id, before, well }: Step & { do: 'move' }): Stepped => {
  const row = rowOf(draft, entity, id)
  if (row === undefined) return no('no-such-row')
  if (well !== undefined && entity !== 'pan') return no('no-such-field')
  if (well !== undefined && rowOf(draft, 'well', well) === undefined) return no('no-such-row')
  const moved = well === undefined ? row : { ...row, well }
  const others = rowsOf(draft, entity).filter(
    (one) => one.id !== id && (entity !== 'pan' || one.row.well === moved.well),
  )
  const place = before === null ? others.length : others.findIndex((one) => one.id === before)
  if (place === -1) return no('no-such-row')
  const [left, right] = [others[place - 1], others[place]]
  const at =
    right === undefined
      ? atOf(left?.row) + 1
      : left === undefined
        ? atOf(right.row) - 1
        : (atOf(left.row) + atOf(right.row)) / 2
  const isBetween =
    (left === undefined || atOf(left.row) < at) && (right === undefined || at < atOf(right.row))
  const placed = withRow(draft, keyOf(entity, id), { ...moved, at })
  if (isBetween) return { ok: true, draft: placed }
  const list = [...others.slice(0, place), { id, row: moved }, ...others.slice(place)]
  return { ok: true, draft: renumbered(placed, entity, list) }
}

const rename = (draft: Draft, { entity, id, name }: Step & { do: 'rename' }): Stepped => {
  const row = rowOf(draft, entity, id)
  if (row === undefined) return no('no-such-row')
  const isProposed = entity === 'component' && isProposedShort(textIn(row, 'name'), row.short)
  const fields = { name, ...(isProposed ? { short: proposedShort(name) } : {}) }
  return put(draft, { do: 'put', entity, id, fields })
}

/** The draft after a step. The draft that is given stays as it is. */
export const applyStep = (draft: Draft, step: Step): Stepped => {
  switch (step.do) {
    case 'put':
      return put(draft, step)
    case 'remove':
      return remove(draft, step)
    case 'move':
      return move(draft, step)
    case 'rename':
      return rename(draft, step)
  }
}

const isSameRow = (one: Row | undefined, other: Row | undefined): boolean =>
  one === other || stringify(one) === stringify(other)

/** Keys of the rows that say other things in two drafts. */
export const changedKeys = (before: Rows, after: Rows): readonly EntityKey[] =>
  [...new Set([...Object.keys(before), ...Object.keys(after)])]
    .map((key) => key as EntityKey)
    .filter((key) => !isSameRow(before[key], after[key]))
