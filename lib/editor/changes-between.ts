/** What differs between two drafts of a station, or two documents taken apart, as a list that is said. */
import stringify from 'safe-stable-stringify'
import type { Change } from '#lib/editor/change.ts'
import {
  type Draft,
  type Entity,
  type Json,
  KINDS,
  type Kind,
  type Named,
  type Row,
  rowsOf,
  SINGLES,
  textIn,
  textsIn,
} from '#lib/editor/draft.ts'

const canonical = (value: Json | undefined): string => stringify(value ?? null)

/** How a pan, a back-up pan or a contact is called: by the components that it is of. */
const nameOf = (draft: Draft, { id, row }: Named): string => {
  const said = textIn(row, 'name')
  if (said !== '') return said
  const components = [textIn(row, 'component'), ...textsIn(row, 'components')]
    .filter((one) => one !== '')
    .map((one) => textIn(draft.rows[`component:${one}`], 'name') || one)
  return components.length === 0 ? id : components.join(', ')
}

/** Places in lists are told as moves; where a pan is, with it. */
const PLACES: readonly string[] = ['at', 'well']

const fieldsChanged = (
  entity: Entity,
  id: string,
  name: string,
  before: Row,
  after: Row,
): readonly Change[] =>
  [...new Set([...Object.keys(before), ...Object.keys(after)])]
    .filter((field) => !(PLACES.includes(field) && entity !== 'house'))
    .filter((field) => canonical(before[field]) !== canonical(after[field]))
    .map((field) => ({
      what: 'changed',
      entity,
      id,
      name,
      field,
      from: before[field] ?? null,
      to: after[field] ?? null,
    }))

/** The fewest that have to be taken out so that the rest stands in the order of before. */
const movedIn = (before: readonly string[], after: readonly string[]): ReadonlySet<string> => {
  const ranks = after.map((id) => before.indexOf(id)).filter((rank) => rank !== -1)
  const best: number[][] = []
  for (const rank of ranks) {
    const chain = best
      .filter((one) => (one.at(-1) ?? -1) < rank)
      .reduce<readonly number[]>((one, other) => (other.length > one.length ? other : one), [])
    best.push([...chain, rank])
  }
  const longest = best.reduce<readonly number[]>(
    (one, other) => (other.length > one.length ? other : one),
    [],
  )
  const stays = new Set(longest.map((rank) => before[rank]))
  return new Set(after.filter((id) => before.includes(id) && !stays.has(id)))
}

/** Kinds whose order is seen: on the line, in the menu, on the sheet. */
const ORDERED: readonly Kind[] = ['well', 'pan', 'component', 'item']

const said = (draft: Draft, kind: Kind): readonly Named[] =>
  rowsOf(draft, kind).filter(({ row }) => row.touches !== false)

/** Pans are in order well by well, as they stand. */
const inOrder = (draft: Draft, kind: Kind): readonly Named[] => {
  const rows = said(draft, kind)
  if (kind !== 'pan') return rows
  const wells = rowsOf(draft, 'well').map(({ id }) => id)
  return wells.flatMap((well) => rows.filter(({ row }) => row.well === well))
}

const ofKind = (from: Draft, to: Draft, kind: Kind): readonly Change[] => {
  const [before, after] = [inOrder(from, kind), inOrder(to, kind)]
  const byId = new Map(before.map((one) => [one.id, one]))
  const left = new Set(after.map(({ id }) => id))
  const moved = ORDERED.includes(kind)
    ? movedIn(
        before.map(({ id }) => id),
        after.map(({ id }) => id),
      )
    : new Set<string>()
  const of = (what: 'added' | 'removed' | 'moved', draft: Draft, one: Named): Change => ({
    what,
    entity: kind,
    id: one.id,
    name: nameOf(draft, one),
  })
  return [
    ...before.filter(({ id }) => !left.has(id)).map((one) => of('removed', from, one)),
    ...after.flatMap((one): readonly Change[] => {
      const known = byId.get(one.id)
      if (known === undefined) return [of('added', to, one)]
      const isMoved = moved.has(one.id) || (kind === 'pan' && known.row.well !== one.row.well)
      return [
        ...(isMoved ? [of('moved', to, one)] : []),
        ...fieldsChanged(kind, one.id, nameOf(to, one), known.row, one.row),
      ]
    }),
  ]
}

/** In the order in which a station is set up; none where they say the same. */
export const changesBetween = (from: Draft, to: Draft): readonly Change[] => [
  ...SINGLES.flatMap((single) =>
    fieldsChanged(
      single,
      single,
      textIn(to.rows.house, 'name'),
      from.rows[single] ?? {},
      to.rows[single] ?? {},
    ),
  ),
  ...KINDS.flatMap((kind) => ofKind(from, to, kind)),
]
