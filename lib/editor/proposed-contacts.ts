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
  /** Where it touches: by which tool, on what it is warmed, in which wells. */
  readonly of: string
}

/** A proposal that nobody has answered, as a contact with an id of its own. */
export type OpenContact = Named & {
  readonly row: Row & Pick<Proposed, 'kind' | 'components'>
  readonly of: string
}

interface Column {
  readonly well: string
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
const columnsIn = (draft: Draft, well: string): readonly Column[] => {
  const columns = new Map<number, string[]>()
  for (const { pan, left } of wellFromAbove(standingIn(draft, well)).stands)
    columns.set(left, [...(columns.get(left) ?? []), textIn(rowOf(draft, 'pan', pan), 'component')])
  return [...columns.values()].map((components) => ({ well, components }))
}

const pair = (kind: ContactKind, one: string, other: string, of: string): readonly Proposed[] =>
  one === other || one === '' || other === ''
    ? []
    : [{ kind, components: [one, other].toSorted(), of }]

/** Pans next to each other drip into one another; over the one in front the hand goes to the one behind. */
const byPlace = (draft: Draft): readonly Proposed[] => {
  const columns = rowsOf(draft, 'well').flatMap(({ id }) => columnsIn(draft, id))
  return columns.flatMap(({ well, components }, place) => {
    const next = columns[place + 1]
    const both = next === undefined || next.well === well ? well : `${well} ${next.well}`
    return [
      ...components.flatMap((pan, behind) =>
        components.slice(behind + 1).flatMap((front) => pair('reached-over', pan, front, well)),
      ),
      ...components.flatMap((pan) =>
        (next?.components ?? []).flatMap((one) => pair('beside', pan, one, both)),
      ),
    ]
  })
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
    components.length < 2 ? [] : [{ kind: kindOf(of), components: components.toSorted(), of }],
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

const keyOf = ({ kind, components }: Pick<Proposed, 'kind' | 'components'>): string =>
  `${kind} ${components.join(' ')}`

/** All that the drawing proposes, each once with all places of it, in the order of the line. */
export const proposedContacts = (draft: Draft): readonly Proposed[] => {
  const found = new Map<string, Proposed>()
  for (const one of [...byPlace(draft), ...byWarming(draft), ...byTool(draft)]) {
    const before = found.get(keyOf(one))
    const places = before === undefined ? [] : before.of.split(', ')
    const of = [...new Set([...places, one.of])].toSorted().join(', ')
    found.set(keyOf(one), { ...one, of })
  }
  return [...found.values()]
}

const NEAR: readonly string[] = ['beside', 'reached-over']

/**
 * Answered where a contact of its sort, touching or not, names all of it. Of neighbours that touch it
 * is one whether they stand beside or behind; what doesn't touch doesn't by that tool or in that place,
 * so that another is asked anew.
 */
const isAnswered = (rows: readonly Named[], { kind, components, of }: Proposed): boolean =>
  rows.some(({ row }) => {
    const said = textIn(row, 'kind')
    const isNear = NEAR.includes(said) && NEAR.includes(kind)
    const isOfSort =
      row.touches === false ? said === kind && textIn(row, 'of') === of : said === kind || isNear
    const named = textsIn(row, 'components')
    return isOfSort && components.every((one) => named.includes(one))
  })

/** Proposals that nobody has answered. */
export const openContacts = (draft: Draft): readonly OpenContact[] => {
  const answered = rowsOf(draft, 'contact')
  const found: OpenContact[] = []
  let sofar = draft
  for (const one of proposedContacts(draft)) {
    if (isAnswered(answered, one)) continue
    const { kind, components, of } = one
    const id = newId(sofar, 'contact', `${kind} ${components.join(' ')}`)
    const row = { kind, components }
    sofar = { ...sofar, rows: { ...sofar.rows, [`contact:${id}`]: row } }
    found.push({ id, row, of })
  }
  return found
}

const sameIn = (draft: Draft, row: Row): string => {
  const components = textsIn(row, 'components').toSorted()
  const kind = textIn(row, 'kind')
  return (
    proposedContacts(draft).find(
      (one) => one.kind === kind && one.components.join(' ') === components.join(' '),
    )?.of ?? ''
  )
}

/** What a contact says once somebody said that it doesn't touch: where the drawing has it now. */
export const apartFields = (draft: Draft, row: Row): Row => ({
  touches: false,
  of: sameIn(draft, row),
})

/** Answers that something doesn't touch, of which another tool or place is open since. */
export const outdatedContacts = (
  draft: Draft,
  open: readonly OpenContact[] = openContacts(draft),
): readonly Named[] => {
  const asked = new Set(open.map(({ row }) => keyOf(row)))
  return rowsOf(draft, 'contact').filter(
    ({ row }) =>
      row.touches === false &&
      asked.has(`${textIn(row, 'kind')} ${textsIn(row, 'components').toSorted().join(' ')}`),
  )
}

/**
 * What a person's answer to the open proposals is saved as.
 * @param apart ids of those that don't touch after all
 */
export const confirmSteps = (draft: Draft, apart: readonly string[]): readonly Step[] => {
  const open = openContacts(draft)
  return [
    ...outdatedContacts(draft, open).map(
      ({ id }): Step => ({ do: 'remove', entity: 'contact', id }),
    ),
    ...open.map(({ id, row, of }): Step => {
      const fields = apart.includes(id) ? { ...row, touches: false, of } : row
      return { do: 'put', entity: 'contact', id, fields }
    }),
    { do: 'put', entity: 'house', id: 'house', fields: { contactsSaid: true } },
  ]
}
