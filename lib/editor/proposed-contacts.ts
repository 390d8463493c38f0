/** What touches what as far as the drawing tells: proposed as touching, confirmed by a person once. */
import {
  type Draft,
  isRecord,
  type Named,
  type Row,
  rowOf,
  rowsOf,
  textIn,
  textsIn,
} from '#lib/editor/draft.ts'
import { newId } from '#lib/editor/ids.ts'
import type { Step } from '#lib/editor/step.ts'
import { PAN_SIZES, type PanSize } from '#lib/measure/pans.ts'
import { wellFromAbove } from '#lib/measure/well-layout.ts'
import type { ContactKind } from '#lib/station/station-document.ts'

export interface Proposed {
  readonly kind: ContactKind
  /** Ids, at least two, each once. */
  readonly components: readonly string[]
}

interface Standing {
  readonly pan: string
  readonly size: PanSize
}

const standingIn = (draft: Draft, well: string): readonly Standing[] =>
  rowsOf(draft, 'pan').flatMap(({ id, row }) => {
    const size = PAN_SIZES.find((one) => one === row.size)
    return textIn(row, 'well') !== well || size === undefined ? [] : [{ pan: id, size }]
  })

/** Components of a well as its pans are drawn: column by column along the line, each from the back. */
const columnsIn = (draft: Draft, well: string): readonly (readonly string[])[] => {
  const columns = new Map<number, string[]>()
  for (const { pan, left } of wellFromAbove(standingIn(draft, well)).stands)
    columns.set(left, [...(columns.get(left) ?? []), textIn(rowOf(draft, 'pan', pan), 'component')])
  return [...columns.values()]
}

const pair = (kind: ContactKind, one: string, other: string): readonly Proposed[] =>
  one === other || one === '' || other === '' ? [] : [{ kind, components: [one, other].toSorted() }]

/** Pans next to each other drip into one another; over the one in front the hand goes to the one behind. */
const byPlace = (draft: Draft): readonly Proposed[] => {
  const columns = rowsOf(draft, 'well').flatMap(({ id }) => columnsIn(draft, id))
  return columns.flatMap((column, place) => [
    ...column.flatMap((pan, behind) =>
      column.slice(behind + 1).flatMap((front) => pair('reached-over', pan, front)),
    ),
    ...column.flatMap((pan) =>
      (columns[place + 1] ?? []).flatMap((next) => pair('beside', pan, next)),
    ),
  ])
}

const WARMED_ON: readonly ContactKind[] = ['griddle', 'press', 'toaster', 'fryer', 'board']

const grouped = (
  pairs: readonly (readonly [of: string, component: string])[],
): ReadonlyMap<string, readonly string[]> => {
  const groups = new Map<string, string[]>()
  for (const [of, component] of pairs) groups.set(of, [...(groups.get(of) ?? []), component])
  return groups
}

const together = (
  kindOf: (of: string) => ContactKind,
  groups: ReadonlyMap<string, readonly string[]>,
): readonly Proposed[] =>
  [...groups].flatMap(([of, components]) =>
    components.length < 2 ? [] : [{ kind: kindOf(of), components: components.toSorted() }],
  )

/** What is warmed on the same thing, as it is called. */
const byWarming = (draft: Draft): readonly Proposed[] =>
  together(
    (on) => WARMED_ON.find((kind) => on.includes(kind)) ?? 'warmer',
    grouped(
      rowsOf(draft, 'component').flatMap(({ id, row }) => {
        const on = isRecord(row.warm) ? textIn(row.warm, 'on').trim().toLowerCase() : ''
        return on === '' ? [] : [[on, id] as const]
      }),
    ),
  )

/** The tool that takes a portion, as far as two of a sort can be one; null where each has its own. */
const toolOf = (portion: Row): string | null => {
  const tool = textIn(portion, 'tool')
  if (tool === 'tongs' || tool === 'tongs-pieces') return 'tongs'
  const sized = portion.number ?? portion.flOz ?? portion.size
  return ['scoop', 'ladle', 'spoodle', 'measure'].includes(tool) && sized !== undefined
    ? `${tool} ${sized} ${textIn(portion, 'unit')}`
    : null
}

/** Portions by the same tool, but for those that have one of their own among the station's tools. */
const byTool = (draft: Draft): readonly Proposed[] => {
  const own = new Set(rowsOf(draft, 'tool').map(({ row }) => textIn(row, 'usualFor')))
  return together(
    () => 'scoop',
    grouped(
      rowsOf(draft, 'component').flatMap(({ id, row }) => {
        const tool = isRecord(row.portion) ? toolOf(row.portion) : null
        return tool === null || own.has(id) ? [] : [[tool, id] as const]
      }),
    ),
  )
}

const keyOf = ({ kind, components }: Proposed): string => `${kind} ${components.join(' ')}`

/** All that the drawing proposes, each once, in the order of the line. */
export const proposedContacts = (draft: Draft): readonly Proposed[] => [
  ...new Map(
    [...byPlace(draft), ...byWarming(draft), ...byTool(draft)].map((one) => [keyOf(one), one]),
  ).values(),
]

const NEAR: readonly string[] = ['beside', 'reached-over']

/**
 * Answered where a contact of its sort, touching or not, names all of it. Of neighbours that touch it
 * is one whether they stand beside or behind; of those that don't, another place is asked anew.
 */
const isAnswered = (rows: readonly Named[], { kind, components }: Proposed): boolean =>
  rows.some(({ row }) => {
    const said = textIn(row, 'kind')
    const isNear = row.touches !== false && NEAR.includes(said) && NEAR.includes(kind)
    const isOfSort = said === kind || isNear
    const named = textsIn(row, 'components')
    return isOfSort && components.every((one) => named.includes(one))
  })

/** Proposals that nobody has answered, as contacts with ids of their own. */
export const openContacts = (
  draft: Draft,
): readonly (Named & { readonly row: Row & Proposed })[] => {
  const answered = rowsOf(draft, 'contact')
  const found: (Named & { readonly row: Row & Proposed })[] = []
  let sofar = draft
  for (const one of proposedContacts(draft)) {
    if (isAnswered(answered, one)) continue
    const id = newId(sofar, 'contact', `${one.kind} ${one.components.join(' ')}`)
    const row = { kind: one.kind, components: one.components }
    sofar = { ...sofar, rows: { ...sofar.rows, [`contact:${id}`]: row } }
    found.push({ id, row })
  }
  return found
}

/**
 * What a person's answer to the open proposals is saved as.
 * @param apart ids of those that don't touch after all
 */
export const confirmSteps = (draft: Draft, apart: readonly string[]): readonly Step[] => [
  ...openContacts(draft).map(({ id, row }): Step => {
    const fields = apart.includes(id) ? { ...row, touches: false } : row
    return { do: 'put', entity: 'contact', id, fields }
  }),
  { do: 'put', entity: 'house', id: 'house', fields: { contactsSaid: true } },
]
