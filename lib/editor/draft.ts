/**
 * A station as it is being set up: rows by entity, which may say anything yet, so that nothing typed
 * is lost. What is wrong with them is told beside (problem.ts), and no service ever sees a draft.
 */

export type Json =
  | string
  | number
  | boolean
  | null
  | readonly Json[]
  | { readonly [key: string]: Json }

/**
 * The fields of one entity, called as in the station document. A field that isn't there has no
 * answer yet; null is an answer where the document has one ("nobody weighed it"). Labels are in no row.
 */
export type Row = Readonly<Record<string, Json>>

/** The row of temperatures and times, by the name of its part of the document. */
export const LIMITS = 'safety'

/** Of these a station has one each. */
export const SINGLES = ['house', LIMITS, 'day'] as const

/**
 * Of these it has several, in an order: `at` is a number of the row's own, lowest first, so that two
 * people who add something change no row of each other's.
 */
export const KINDS = [
  'well',
  'pan',
  'backup',
  'tool',
  'component',
  'recipe',
  'ingredient',
  'item',
  'contact',
] as const

export type Single = (typeof SINGLES)[number]
export type Kind = (typeof KINDS)[number]
/**
 * What is not as in the document: `house` has its top level (name, time zone, allergens …) and
 * `contactsSaid`; a `pan` names its `well`; a `contact` that doesn't touch after all has `touches`
 * false and `of`, the tool or place that this was said of; an `ingredient` without `at` is one of the house that this station doesn't list.
 */
export type Entity = Single | Kind
export type EntityKey = Single | `${Kind}:${string}`

export type Rows = Readonly<Partial<Record<EntityKey, Row>>>

export interface Draft {
  /** Id of the station, which never changes. */
  readonly station: string
  readonly rows: Rows
}

export interface Named {
  readonly id: string
  readonly row: Row
}

export const isSingle = (entity: string): entity is Single => SINGLES.some((one) => one === entity)

/** The key of an entity; the id of a single is its own name. */
export const keyOf = (entity: Entity, id: string): EntityKey =>
  isSingle(entity) ? entity : `${entity}:${id}`

/** What a key names. */
export const namedBy = (key: EntityKey): { readonly entity: Entity; readonly id: string } => {
  if (isSingle(key)) return { entity: key, id: key }
  const colon = key.indexOf(':')
  return { entity: key.slice(0, colon) as Kind, id: key.slice(colon + 1) }
}

export const rowOf = (draft: Draft, entity: Entity, id: string): Row | undefined =>
  draft.rows[keyOf(entity, id)]

const placeOf = ({ row }: Named): number =>
  typeof row.at === 'number' ? row.at : Number.POSITIVE_INFINITY

const before = (one: Named, other: Named): number => {
  const [a, b] = [placeOf(one), placeOf(other)]
  if (a !== b) return a < b ? -1 : 1
  return one.id < other.id ? -1 : 1
}

/** All of a kind in their order; those without a place come last, by their ids. */
export const rowsOf = (draft: Draft, kind: Kind): readonly Named[] =>
  Object.entries(draft.rows)
    .flatMap(([key, row]) =>
      row !== undefined && key.startsWith(`${kind}:`)
        ? [{ id: key.slice(kind.length + 1), row }]
        : [],
    )
    .sort(before)

/** A field where it is text, as typed; empty where it has no answer or is something else. */
export const textIn = (row: Row | undefined, field: string): string => {
  const value = row?.[field]
  return typeof value === 'string' ? value : ''
}

/** A field's texts, as ids are listed; none where it has no answer. */
export const textsIn = (row: Row | undefined, field: string): readonly string[] => {
  const value = row?.[field]
  return Array.isArray(value) ? value.filter((one) => typeof one === 'string') : []
}

/** A field's records, as an item's parts; none where it has no answer. */
export const recordsIn = (row: Row | undefined, field: string): readonly Row[] => {
  const value = row?.[field]
  return Array.isArray(value) ? value.filter(isRecord) : []
}

export const isRecord = (value: Json | undefined): value is Row =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
