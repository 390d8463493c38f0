import { type Draft, type Kind, type Named, rowsOf, textIn } from '#lib/editor/draft.ts'

/** Names that people hold for the same: letters composed, spaces as one, no capitals. */
export const nameKey = (name: string): string =>
  name.normalize('NFC').trim().replace(/\s+/g, ' ').toLowerCase()

/** All of these kinds that are called so. */
export const calledSo = (
  draft: Draft,
  kinds: readonly Kind[],
  name: string,
): readonly (Named & { readonly kind: Kind })[] =>
  kinds.flatMap((kind) =>
    rowsOf(draft, kind)
      .filter(({ row }) => nameKey(textIn(row, 'name')) === nameKey(name))
      .map((one) => ({ ...one, kind })),
  )
