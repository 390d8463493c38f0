/** The drafts of a house: each station's rows with the house's ingredients laid among them. */
import { applyStep, changedKeys } from '#lib/editor/apply-step.ts'
import {
  type Draft,
  type EntityKey,
  keyOf,
  namedBy,
  type Row,
  type Rows,
} from '#lib/editor/draft.ts'
import type { ChangedRows, StaleAnswer } from '#lib/editor/http.ts'
import type { Other, StepRefusal } from '#lib/editor/problem.ts'
import type { Step } from '#lib/editor/step.ts'
import { usersOf } from '#lib/editor/uses.ts'
import { type DraftRows, OF_THE_HOUSE, type RowChange } from '#server/drafts/port.ts'

interface Seen {
  readonly row: Row | null
  readonly revision: number
}

export type SaveAnswer =
  | { readonly code: 'done'; readonly saw: number; readonly rows: ChangedRows }
  | StaleAnswer
  | {
      readonly code: 'step-refused'
      readonly step: number
      readonly why: StepRefusal
      readonly other?: Other
    }

type WhyNot = (
  draft: Draft,
  steps: readonly Step[],
) => { readonly step: number; readonly why: StepRefusal } | null

export interface Drafts {
  stations(): readonly string[]
  has(station: string): boolean
  /** As it stands now, and what is said with the next save. */
  now(station: string): { readonly draft: Draft; readonly saw: number }
  /** What changed since a save, by anybody. */
  since(station: string, saw: number): ChangedRows
  /**
   * Steps on what was seen: all of them or none. Others' changes to other rows stay.
   * @param whyNot what beside the draft itself stands against one of them
   */
  save(station: string, saw: number, steps: readonly Step[], whyNot?: WhyNot): SaveAnswer
  /** A whole draft in place of what there is; stale where anything changed since. */
  replace(draft: Draft, saw: number): SaveAnswer
}

const isIngredient = (entity: EntityKey): boolean => entity.startsWith('ingredient:')

/** Of an ingredient the station has its place in its own list, and the house the rest. */
const apart = (station: string, entity: EntityKey, row: Row): readonly RowChange[] => {
  if (!isIngredient(entity)) return [{ station, entity, row }]
  const { at, ...called } = row
  return [
    { station: OF_THE_HOUSE, entity, row: called },
    { station, entity, row: at === undefined ? null : { at } },
  ]
}

const namedKey = ({ entity, id }: Step): EntityKey => keyOf(entity, id)

const same = (one: Row | null | undefined, other: Row | null): boolean =>
  JSON.stringify(one ?? null) === JSON.stringify(other)

export const createDrafts = (rows: DraftRows): Drafts => {
  const seen = (station: string): ReadonlyMap<EntityKey, Seen> => {
    const all = new Map<EntityKey, Seen>(
      rows.of(OF_THE_HOUSE).map(({ entity, row, revision }) => [entity, { row, revision }]),
    )
    for (const { entity, row, revision } of rows.of(station)) {
      const house = all.get(entity)
      all.set(
        entity,
        house === undefined
          ? { row, revision }
          : {
              row: house.row === null ? null : { ...house.row, ...row },
              revision: Math.max(house.revision, revision),
            },
      )
    }
    return all
  }

  const draftIn = (station: string, all: ReadonlyMap<EntityKey, Seen>): Draft => {
    const there: Partial<Record<EntityKey, Row>> = {}
    for (const [key, { row }] of all) if (row !== null) there[key] = row
    return { station, rows: there }
  }

  const changedSince = (all: ReadonlyMap<EntityKey, Seen>, saw: number): ChangedRows =>
    Object.fromEntries(
      [...all].flatMap(([key, { row, revision }]) => (revision > saw ? [[key, row]] : [])),
    )

  const staleIn = (
    all: ReadonlyMap<EntityKey, Seen>,
    saw: number,
    changed: readonly EntityKey[],
  ): StaleAnswer => ({
    code: 'stale',
    saw: rows.newest(),
    rows: changedSince(all, saw),
    changed,
  })

  /** An ingredient that another station lists, or has in its food, stays the house's. */
  const isElsewhere = (station: string, entity: EntityKey): boolean =>
    rows
      .stations()
      .filter((one) => one !== station)
      .some((one) => {
        const { draft } = now(one)
        const { id } = namedBy(entity)
        return 'at' in (draft.rows[entity] ?? {}) || usersOf(draft, 'ingredient', id).length > 0
      })

  const changesOf = (station: string, before: Rows, after: Rows): readonly RowChange[] => {
    const kept = new Map(rows.of(station).map((one) => [one.entity, one.row]))
    const ofHouse = new Map(rows.of(OF_THE_HOUSE).map((one) => [one.entity, one.row]))
    return changedKeys(before, after)
      .flatMap((entity): readonly RowChange[] => {
        const row = after[entity]
        if (row !== undefined) return apart(station, entity, row)
        const own: RowChange = { station, entity, row: null }
        return isIngredient(entity) && !isElsewhere(station, entity)
          ? [own, { station: OF_THE_HOUSE, entity, row: null }]
          : [own]
      })
      .filter(
        (one) => !same((one.station === OF_THE_HOUSE ? ofHouse : kept).get(one.entity), one.row),
      )
  }

  const keep = (station: string, before: Rows, after: Rows, saw: number): SaveAnswer => {
    const changes = changesOf(station, before, after)
    if (changes.length > 0) rows.save(changes)
    return { code: 'done', saw: rows.newest(), rows: changedSince(seen(station), saw) }
  }

  const now = (station: string) => ({
    draft: draftIn(station, seen(station)),
    saw: rows.newest(),
  })

  return {
    stations: rows.stations,
    has: (station) => rows.of(station).length > 0,
    now,
    since: (station, saw) => changedSince(seen(station), saw),
    save: (station, saw, steps, whyNot) => {
      const all = seen(station)
      const newer = (key: EntityKey): boolean => (all.get(key)?.revision ?? 0) > saw
      const before = draftIn(station, all)
      let draft = before
      for (const [step, one] of steps.entries()) {
        const stepped = applyStep(draft, one)
        if (stepped.ok) {
          draft = stepped.draft
          continue
        }
        const key = namedKey(one)
        if (newer(key)) return staleIn(all, saw, [key])
        const { why, other } = stepped
        return { code: 'step-refused', step, why, ...(other === undefined ? {} : { other }) }
      }
      const changed = changedKeys(before.rows, draft.rows).filter(newer)
      if (changed.length > 0) return staleIn(all, saw, changed)
      const not = whyNot?.(before, steps) ?? null
      return not === null
        ? keep(station, before.rows, draft.rows, saw)
        : { code: 'step-refused', ...not }
    },
    replace: (draft, saw) => {
      const all = seen(draft.station)
      const changed = [...all].flatMap(([key, { revision }]) => (revision > saw ? [key] : []))
      if (changed.length > 0) return staleIn(all, saw, changed)
      const before = draftIn(draft.station, all)
      // Ingredients of the house that aren't this station's stay as they are.
      const others = Object.entries(before.rows).filter(
        ([key, row]) => isIngredient(key as EntityKey) && row !== undefined && !('at' in row),
      )
      const after: Rows = { ...Object.fromEntries(others), ...draft.rows }
      return keep(draft.station, before.rows, after, saw)
    },
  }
}
