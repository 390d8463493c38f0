import { type Kind, keyOf } from '#lib/editor/draft.ts'
import { newId } from '#lib/editor/ids.ts'

/** The id of something new by its name, other than those that are taken. */
export const freeId = (
  kind: Kind,
  name: string,
  isTaken: (id: string) => boolean,
  tried: readonly string[] = [],
): string => {
  const rows = Object.fromEntries(tried.map((id) => [keyOf(kind, id), {}]))
  const id = newId({ station: '', rows }, kind, name)
  return isTaken(id) ? freeId(kind, name, isTaken, [...tried, id]) : id
}
