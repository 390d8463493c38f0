/** What each row of a table of cards will do to a draft: it adds a line or changes one, and takes none away. */

import type { Plan, PlannedRow, RowChange, RowRefusal } from '#lib/carry/csv/planned.ts'
import { type CardLine, cardOf, type RecipeColumn } from '#lib/carry/csv/recipes-table.ts'
import type { Table, TableRow } from '#lib/carry/csv/table.ts'
import { type Called, type Names, nameKey, namesIn } from '#lib/carry/names/by-name.ts'
import { freeId } from '#lib/carry/names/free-id.ts'
import { MOST_ROWS } from '#lib/editor/apply-step.ts'
import {
  type Draft,
  type EntityKey,
  keyOf,
  type Row,
  rowsOf,
  textIn,
  textsIn,
} from '#lib/editor/draft.ts'
import type { Step } from '#lib/editor/step.ts'

type Read = TableRow<RecipeColumn>
type Made = 'recipe' | 'component'

const MADE: readonly Made[] = ['recipe', 'component']

interface Card {
  readonly kind: Made
  /** null: a recipe that is begun. */
  readonly id: string | null
}

const isRefusal = (one: object): one is RowRefusal => 'code' in one

/** Which card a row is of: recipes are begun, a component has to be there. */
const cardFor = (names: Names, { what, name }: Read['cells']): Card | RowRefusal => {
  const kind = MADE.find((one) => one === nameKey(what))
  if (what !== '' && kind === undefined)
    return { code: 'unknown-word', column: 'what', value: what }
  const called = names.find(name, kind === undefined ? MADE : [kind])
  if (called.length > 1) return { code: 'several-here', column: 'name', value: name }
  const [one] = called
  if (one) return { kind: one.kind as Made, id: one.id }
  if (kind === 'component') return { code: 'no-such-component', column: 'name', value: name }
  return { kind: 'recipe', id: null }
}

const foodFor = (names: Names, name: string): Called | RowRefusal => {
  const column = 'made with'
  const called = names.find(name, ['ingredient', 'recipe'])
  if (called.length > 1) return { code: 'several-here', column, value: name }
  return called[0] ?? { code: 'no-such-food', column, value: name }
}

type RowAt = (key: EntityKey) => Row | undefined

/** Whether a recipe is in another, by way of others too. */
const isIn = (rowAt: RowAt, inner: string, outer: string, seen = new Set<string>()): boolean => {
  if (inner === outer) return true
  if (seen.has(outer)) return false
  seen.add(outer)
  return textsIn(rowAt(keyOf('recipe', outer)), 'recipes').some((id) =>
    isIn(rowAt, inner, id, seen),
  )
}

const withLine = (card: readonly CardLine[], of: string, nth: number, typed: string | null) => {
  let left = nth
  const place = card.findIndex((line) => line.of === of && left-- === 0)
  if (place === -1) return [...card, { of, typed }]
  return card.map((line, index) => (index === place && typed !== null ? { of, typed } : line))
}

const nthLine = (card: readonly CardLine[], of: string, nth: number): CardLine | undefined =>
  card.filter((line) => line.of === of)[nth]

/** The fields of a card's row that say these lines. */
const fieldsOf = (row: Row | undefined, card: readonly CardLine[], food: Called | null): Row => {
  const lines = card.flatMap(({ of, typed }) => (typed === null ? [] : [{ of, typed }]))
  const list = food === null ? null : food.kind === 'recipe' ? 'recipes' : 'ingredients'
  const there = list === null ? [] : textsIn(row, list)
  return {
    ...(lines.length === 0 ? {} : { lines }),
    ...(list === null || food === null || there.includes(food.id)
      ? {}
      : { [list]: [...there, food.id] }),
  }
}

const changesOf = (
  { 'made with': made, amount, yields }: Read['cells'],
  line: CardLine | undefined,
  row: Row | undefined,
): readonly RowChange[] => [
  ...(made !== '' && line === undefined ? [{ field: 'made with', from: '', to: made }] : []),
  ...(amount !== '' && line?.typed !== amount
    ? [{ field: 'amount', from: line?.typed ?? '', to: amount }]
    : []),
  ...(yields !== '' && textIn(row, 'yields') !== yields
    ? [{ field: 'yields', from: textIn(row, 'yields'), to: yields }]
    : []),
]

/** What a row lacks, or says of what has none. */
const lacking = (cells: Read['cells'], card: Card): RowRefusal | null => {
  const { 'made with': made, amount, yields } = cells
  // A card that is there and has nothing on it is a row as well.
  const isBare = made === '' && yields === '' && card.id === null
  if (isBare || (made === '' && amount !== '')) return { code: 'nothing-said', column: 'made with' }
  return yields !== '' && card.kind === 'component'
    ? { code: 'yields-of-component', column: 'yields' }
    : null
}

/** Of recipes that the draft has or the table begins, in the order of its rows. */
export const recipesPlan = (draft: Draft, table: Table<RecipeColumn>): Plan => {
  const names = namesIn(draft, ['ingredient', 'recipe', 'component'])
  const taken = new Set(
    (['ingredient', 'recipe'] as const).flatMap((kind) => rowsOf(draft, kind).map(({ id }) => id)),
  )
  /** Rows as the table has left them so far. */
  const changed = new Map<EntityKey, Row>()
  const rowAt: RowAt = (key) => changed.get(key) ?? draft.rows[key]
  let room = MOST_ROWS - Object.keys(draft.rows).length
  const begun = new Set<string>()
  /** How often a card had a row of one food, so that its second line is told from its first. */
  const seen = new Map<string, number>()
  const steps: Step[] = []

  const plan = ({ row: number, cells, problem }: Read): PlannedRow => {
    const { name, amount, yields, 'made with': made } = cells
    const refused = (why: RowRefusal): PlannedRow => ({
      ...{ row: number, name, with: made, does: 'refused', changes: [], notes: [] },
      why,
    })
    if (problem) return refused(problem)
    if (name === '') return refused({ code: 'nothing-said', column: 'name' })
    const card = cardFor(names, cells)
    if (isRefusal(card)) return refused(card)
    const lacks = lacking(cells, card)
    if (lacks) return refused(lacks)
    const food = made === '' ? null : foodFor(names, made)
    if (food !== null && isRefusal(food)) return refused(food)
    const isInside =
      food?.kind === 'recipe' &&
      card.kind === 'recipe' &&
      card.id !== null &&
      isIn(rowAt, card.id, food.id)
    if (isInside) return refused({ code: 'contains-itself', column: 'made with', value: made })
    if (card.id === null && room < 1) return refused({ code: 'too-large' })

    const id = card.id ?? freeId('recipe', name, (one) => taken.has(one))
    const key = keyOf(card.kind, id)
    const row = rowAt(key)
    const before = cardOf(row)
    const seenAs = `${key} ${food?.id ?? ''}`
    const nth = seen.get(seenAs) ?? 0
    seen.set(seenAs, nth + 1)
    const typed = amount === '' ? null : amount
    const line = food === null ? undefined : nthLine(before, food.id, nth)
    const after = food === null ? before : withLine(before, food.id, nth, typed)
    const changes = changesOf(cells, line, row)
    if (card.id === null) {
      names.call({ kind: 'recipe', id }, name)
      taken.add(id)
      begun.add(id)
      room -= 1
    }
    if (changes.length > 0) {
      const fields: Row = {
        ...(card.id === null ? { name } : {}),
        ...fieldsOf(row, after, food),
        ...(yields === '' ? {} : { yields }),
      }
      changed.set(key, { ...row, ...fields })
      steps.push({ do: 'put', entity: card.kind, id, fields })
    }
    const isNew = card.kind === 'recipe' && begun.has(id)
    const does = isNew ? 'new' : changes.length > 0 ? 'changes' : 'same'
    return { row: number, name, with: made, does, changes, notes: [], why: null }
  }

  return { rows: table.rows.map(plan), steps, labels: {} }
}
