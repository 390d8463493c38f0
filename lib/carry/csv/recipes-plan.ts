/** What each row of a table of cards will do to a draft: it adds a line or changes one, and takes none away. */
import { calledSo, nameKey } from '#lib/carry/csv/by-name.ts'
import type { Plan, PlannedRow, RowChange, RowRefusal } from '#lib/carry/csv/planned.ts'
import { type CardLine, cardOf, type RecipeColumn } from '#lib/carry/csv/recipes-table.ts'
import type { Table, TableRow } from '#lib/carry/csv/table.ts'
import { applyStep } from '#lib/editor/apply-step.ts'
import { type Draft, type Kind, type Row, rowOf, textIn, textsIn } from '#lib/editor/draft.ts'
import { newId } from '#lib/editor/ids.ts'
import type { Step } from '#lib/editor/step.ts'

type Read = TableRow<RecipeColumn>
type Made = 'recipe' | 'component'

const MADE: readonly Made[] = ['recipe', 'component']

interface Card {
  readonly kind: Made
  /** null: a recipe that is begun. */
  readonly id: string | null
}

interface SoFar extends Plan {
  readonly draft: Draft
  /** Recipes that this table began, by the key of their name. */
  readonly begun: ReadonlyMap<string, string>
  /** How often a card had a row of one food, so that its second line is told from its first. */
  readonly seen: ReadonlyMap<string, number>
}

const isRefusal = (one: object): one is RowRefusal => 'code' in one

/** Which card a row is of: recipes are begun, a component has to be there. */
const cardFor = (draft: Draft, { what, name }: Read['cells']): Card | RowRefusal => {
  const kind = MADE.find((one) => one === nameKey(what))
  if (what !== '' && kind === undefined)
    return { code: 'unknown-word', column: 'what', value: what }
  const called = calledSo(draft, kind === undefined ? MADE : [kind], name)
  if (called.length > 1) return { code: 'several-here', column: 'name', value: name }
  const [one] = called
  if (one) return { kind: one.kind as Made, id: one.id }
  if (kind === 'component') return { code: 'no-such-component', column: 'name', value: name }
  return { kind: 'recipe', id: null }
}

interface Food {
  readonly kind: Kind
  readonly id: string
}

const foodFor = (draft: Draft, name: string): Food | RowRefusal => {
  const column = 'made with'
  const called = calledSo(draft, ['ingredient', 'recipe'], name)
  if (called.length > 1) return { code: 'several-here', column, value: name }
  const [one] = called
  return one ?? { code: 'no-such-food', column, value: name }
}

/** Whether a recipe is in another, by way of others too. */
const isIn = (draft: Draft, inner: string, outer: string, above: readonly string[] = []): boolean =>
  inner === outer ||
  (!above.includes(outer) &&
    textsIn(rowOf(draft, 'recipe', outer), 'recipes').some((id) =>
      isIn(draft, inner, id, [...above, outer]),
    ))

const withLine = (card: readonly CardLine[], of: string, nth: number, typed: string | null) => {
  let left = nth
  const place = card.findIndex((line) => line.of === of && left-- === 0)
  if (place === -1) return [...card, { of, typed }]
  return card.map((line, index) => (index === place && typed !== null ? { of, typed } : line))
}

const nthLine = (card: readonly CardLine[], of: string, nth: number): CardLine | undefined =>
  card.filter((line) => line.of === of)[nth]

/** The fields of a card's row that say these lines. */
const fieldsOf = (row: Row | undefined, card: readonly CardLine[], food: Food | null): Row => {
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

const refused = (so: SoFar, { row, cells }: Read, why: RowRefusal): SoFar => {
  const { name } = cells
  const one = { row, name, with: cells['made with'], changes: [], notes: [], why }
  return { ...so, rows: [...so.rows, { ...one, does: 'refused' }] }
}

const withRow = (so: SoFar, read: Read): SoFar => {
  const { cells, problem, row: number } = read
  const { name, amount, yields } = cells
  if (problem) return refused(so, read, problem)
  if (name === '') return refused(so, read, { code: 'nothing-said', column: 'name' })
  const card = cardFor(so.draft, cells)
  if (isRefusal(card)) return refused(so, read, card)
  const made = cells['made with']
  // A card that is there and has nothing on it is a row as well.
  const isBare = made === '' && yields === '' && card.id === null
  if (isBare || (made === '' && amount !== ''))
    return refused(so, read, { code: 'nothing-said', column: 'made with' })
  if (yields !== '' && card.kind === 'component')
    return refused(so, read, { code: 'yields-of-component', column: 'yields' })
  const food = made === '' ? null : foodFor(so.draft, made)
  if (food !== null && isRefusal(food)) return refused(so, read, food)
  const id = card.id ?? newId(so.draft, 'recipe', name)
  if (food?.kind === 'recipe' && card.kind === 'recipe' && isIn(so.draft, id, food.id))
    return refused(so, read, { code: 'contains-itself', column: 'made with', value: made })
  const row = rowOf(so.draft, card.kind, id)
  const before = cardOf(row)
  const seenAs = `${card.kind} ${id} ${food?.id ?? ''}`
  const nth = so.seen.get(seenAs) ?? 0
  const line = food === null ? undefined : nthLine(before, food.id, nth)
  const typed = amount === '' ? null : amount
  const after = food === null ? before : withLine(before, food.id, nth, typed)
  const changes: readonly RowChange[] = [
    ...(food !== null && line === undefined ? [{ field: 'made with', from: '', to: made }] : []),
    ...(typed !== null && line?.typed !== typed
      ? [{ field: 'amount', from: line?.typed ?? '', to: typed }]
      : []),
    ...(yields !== '' && textIn(row, 'yields') !== yields
      ? [{ field: 'yields', from: textIn(row, 'yields'), to: yields }]
      : []),
  ]
  const fields: Row = {
    ...(card.id === null ? { name } : {}),
    ...fieldsOf(row, after, food),
    ...(yields === '' ? {} : { yields }),
  }
  const isNew = card.id === null || so.begun.get(nameKey(name)) === id
  const steps: readonly Step[] =
    changes.length === 0 && card.id !== null ? [] : [{ do: 'put', entity: card.kind, id, fields }]
  const [step] = steps
  const stepped = step === undefined ? null : applyStep(so.draft, step)
  if (stepped !== null && !stepped.ok) return refused(so, read, { code: 'too-large' })
  const planned: PlannedRow = {
    row: number,
    name,
    with: made,
    does: isNew ? 'new' : changes.length > 0 ? 'changes' : 'same',
    changes,
    notes: [],
    why: null,
  }
  return {
    draft: stepped?.draft ?? so.draft,
    begun: isNew ? new Map([...so.begun, [nameKey(name), id]]) : so.begun,
    seen: new Map([...so.seen, [seenAs, nth + 1]]),
    rows: [...so.rows, planned],
    steps: [...so.steps, ...steps],
    labels: so.labels,
  }
}

/** Of recipes that the draft has or the table begins, in the order of its rows. */
export const recipesPlan = (draft: Draft, table: Table<RecipeColumn>): Plan => {
  const start: SoFar = {
    draft,
    begun: new Map(),
    seen: new Map(),
    rows: [],
    steps: [],
    labels: {},
  }
  const { rows, steps, labels } = table.rows.reduce(withRow, start)
  return { rows, steps, labels }
}
