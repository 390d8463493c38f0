/** What uses what in a draft, by ids. */
import {
  type Draft,
  type Entity,
  isRecord,
  type Kind,
  type Named,
  recordsIn,
  rowsOf,
  textIn,
  textsIn,
} from '#lib/editor/draft.ts'

interface User {
  readonly entity: Kind
  readonly id: string
}

const made = ['component', 'recipe'] as const

/** Components of an item: its heart, its bases and its parts. */
export const takenBy = ({ row }: Named): readonly string[] => [
  textIn(row, 'heart'),
  ...(isRecord(row.base) ? textsIn(row.base, 'choices') : []),
  ...recordsIn(row, 'parts').map((part) => textIn(part, 'component')),
]

const usersOfComponent = (draft: Draft, id: string): readonly User[] => [
  ...rowsOf(draft, 'item')
    .filter((item) => takenBy(item).includes(id))
    .map((item) => ({ entity: 'item' as const, id: item.id })),
  ...(['pan', 'backup'] as const).flatMap((entity) =>
    rowsOf(draft, entity)
      .filter(({ row }) => textIn(row, 'component') === id)
      .map((one) => ({ entity, id: one.id })),
  ),
]

/**
 * Who would be left with something that isn't there, were it removed. Contacts and tools aren't asked:
 * what a component touched, and whose own scoop one was, go with it.
 */
export const usersOf = (draft: Draft, entity: Entity, id: string): readonly User[] => {
  switch (entity) {
    case 'ingredient':
    case 'recipe':
      return made.flatMap((kind) =>
        rowsOf(draft, kind)
          .filter(({ row }) => textsIn(row, `${entity}s`).includes(id))
          .map((one) => ({ entity: kind, id: one.id })),
      )
    case 'component':
      return usersOfComponent(draft, id)
    case 'well':
      return rowsOf(draft, 'pan')
        .filter(({ row }) => textIn(row, 'well') === id)
        .map((one) => ({ entity: 'pan' as const, id: one.id }))
    default:
      return []
  }
}
