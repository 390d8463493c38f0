import { type Draft, type Kind, rowsOf, textIn } from '#lib/editor/draft.ts'

/** Names that people hold for the same: letters composed, spaces as one, no capitals. */
export const nameKey = (name: string): string =>
  name.normalize('NFC').trim().replace(/\s+/g, ' ').toLowerCase()

export interface Called {
  readonly kind: Kind
  readonly id: string
}

/** Who is called what: asked for each row of a table, so that a draft is gone through once. */
export interface Names {
  /** All of these kinds that are called so. */
  find(name: string, kinds: readonly Kind[]): readonly Called[]
  /** It is called so from now on. */
  call(one: Called, name: string): void
}

export const namesIn = (draft: Draft, kinds: readonly Kind[]): Names => {
  const byName = new Map<string, readonly Called[]>()
  const nameOf = new Map<string, string>()
  const call = (one: Called, name: string): void => {
    const [key, own] = [nameKey(name), `${one.kind}:${one.id}`]
    const before = nameOf.get(own)
    if (before === key) return
    if (before !== undefined)
      byName.set(
        before,
        (byName.get(before) ?? []).filter(({ kind, id }) => kind !== one.kind || id !== one.id),
      )
    nameOf.set(own, key)
    byName.set(key, [...(byName.get(key) ?? []), one])
  }
  for (const kind of kinds)
    for (const { id, row } of rowsOf(draft, kind)) call({ kind, id }, textIn(row, 'name'))
  return {
    find: (name, of) => (byName.get(nameKey(name)) ?? []).filter(({ kind }) => of.includes(kind)),
    call,
  }
}
