/** A station document that is broken in one place, by a number that chooses the place and the break. */
import type { Json, Row } from '#lib/editor/draft.ts'

type Path = readonly (string | number)[]

/** What a row can't say: its lists are rows, and nobody types an id. */
const NOT_OF_A_ROW = new Set([
  ...['format', 'version', 'id', 'line', 'wells', 'pans', 'ingredients', 'recipes', 'components'],
  ...['items', 'contacts', 'backups', 'tools', 'safety', 'day'],
])

const isList = (path: Path): boolean => {
  const last = path.at(-1)
  if (typeof last === 'number') return path.length <= 2 || (path[0] === 'line' && path.length <= 5)
  if (last === 'id') return true
  return NOT_OF_A_ROW.has(String(last)) && (path.length === 1 || path[0] === 'line')
}

/** Every place of a document that a row, or a label, has a field for. */
export const placesOf = (value: Json, path: Path = []): readonly Path[] => {
  const own = path.length === 0 || isList(path) ? [] : [path]
  if (typeof value !== 'object' || value === null) return own
  const inner = Array.isArray(value)
    ? value.flatMap((one, index) => placesOf(one, [...path, index]))
    : Object.entries(value as Row).flatMap(([key, one]) => placesOf(one, [...path, key]))
  return [...own, ...inner]
}

const GONE = Symbol('gone')

export const BREAKS: readonly (Json | typeof GONE)[] = [
  GONE,
  null,
  -1,
  1_000_001,
  '',
  'x'.repeat(200),
  'nothing',
  [],
  {},
  [{}],
  true,
  'в печи',
]

export const broken = (document: Json, path: Path, how: number): Row => {
  const copy = structuredClone(document) as Record<string, unknown>
  let part: unknown = copy
  for (const step of path.slice(0, -1)) part = (part as Record<string | number, unknown>)[step]
  const last = path.at(-1) ?? ''
  const value = BREAKS[how % BREAKS.length]
  const place = part as Record<string | number, unknown>
  if (value !== GONE) place[last] = value
  else if (Array.isArray(place)) place.splice(Number(last), 1)
  else delete place[last]
  return copy as Row
}
