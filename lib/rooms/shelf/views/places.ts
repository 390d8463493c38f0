/** Where each parcel was set down: it keeps its place while others come and go. */

/** A ticket's builds that stand together, in the order of their letters; the missing ones too. */
export interface Together {
  readonly names: readonly string[]
  /** It stands at the shelf's end: kept apart, or there too long. */
  readonly atEnd: boolean
}

export interface Place {
  /** Board from the top, and place on it from the left; both from 0. */
  readonly row: number
  readonly column: number
  readonly atEnd: boolean
}

export type Places = Readonly<Record<string, Place>>

/** So many boards there are before a ticket is parted for want of room. */
const BOARDS = 3

const keyOf = (row: number, column: number): string => `${row}/${column}`

/** Boards that nothing stands on are taken away; the others keep their order. */
const withoutEmptyBoards = (places: Places): Places => {
  const rows = [...new Set(Object.values(places).map(({ row }) => row))].sort((a, b) => a - b)
  return Object.fromEntries(
    Object.entries(places).map(([name, place]) => [
      name,
      { ...place, row: rows.indexOf(place.row) },
    ]),
  )
}

interface Room {
  readonly columns: number
  /** Boards that are filled before there is another. */
  readonly boards: number
  /** The last column is the end's: others go there only once the boards before it are full. */
  readonly hasEnd: boolean
}

/** The first run of `span` free places on one of these boards, which are that wide. */
const freeRun = (
  taken: ReadonlySet<string>,
  span: number,
  { width, boards }: { readonly width: number; readonly boards: number },
): readonly string[] | null => {
  for (let row = 0; row < boards; row++)
    for (let column = 0; column + span <= width; column++) {
      const keys = Array.from({ length: span }, (_, by) => keyOf(row, column + by))
      if (keys.every((key) => !taken.has(key))) return keys
    }
  return null
}

/** Places for a ticket: side by side where that is to be had, else apart before there is another board. */
const placesFor = (
  taken: ReadonlySet<string>,
  span: number,
  { columns, boards, hasEnd }: Room,
): readonly string[] => {
  const widths = hasEnd && columns > 1 ? [columns - 1, columns] : [columns]
  for (const width of widths) {
    const run = freeRun(taken, span, { width, boards })
    if (run) return run
  }
  const free = Array.from({ length: boards * columns }, (_, at) =>
    keyOf(Math.floor(at / columns), at % columns),
  ).filter((key) => !taken.has(key))
  if (free.length >= span) return free.slice(0, span)
  return freeRun(taken, span, { width: columns, boards: boards + taken.size + 1 }) ?? []
}

/** The last free place on so many boards, each from its end; on another board where there is none. */
const freeAtEnd = (
  taken: ReadonlySet<string>,
  columns: number,
  boards: number,
): { readonly row: number; readonly column: number } => {
  for (let column = columns - 1; column >= 0; column--)
    for (let row = 0; row < boards; row++)
      if (!taken.has(keyOf(row, column))) return { row, column }
  return freeAtEnd(taken, columns, boards + 1)
}

const inChunks = (names: readonly string[], size: number): readonly (readonly string[])[] =>
  Array.from({ length: Math.ceil(names.length / size) }, (_, at) =>
    names.slice(at * size, (at + 1) * size),
  )

/**
 * Places of all that stands there, in the order in which they came: who has one keeps it, whoever is
 * new takes the first free run that holds all of its ticket, and what must stand at the end takes the
 * last places of the boards that all need. An empty board goes.
 *
 * @param columns places on a board, at least 1
 */
export const settle = (before: Places, stands: readonly Together[], columns: number): Places => {
  const wanted = new Map(stands.flatMap(({ names, atEnd }) => names.map((name) => [name, atEnd])))
  const kept = Object.entries(before).filter(
    ([name, place]) => wanted.get(name) === place.atEnd && place.column < columns,
  )
  const places: Record<string, Place> = { ...withoutEmptyBoards(Object.fromEntries(kept)) }
  const taken = new Set(Object.values(places).map(({ row, column }) => keyOf(row, column)))
  const put = (name: string, place: Place) => {
    places[name] = place
    taken.add(keyOf(place.row, place.column))
  }
  const isNew = (name: string) => places[name] === undefined
  const room: Room = {
    columns,
    boards: Math.max(BOARDS, Math.ceil(wanted.size / columns)),
    hasEnd: stands.some(({ atEnd }) => atEnd),
  }
  for (const { names } of stands.filter(({ atEnd }) => atEnd))
    for (const name of names.filter(isNew)) {
      put(name, { ...freeAtEnd(taken, columns, Math.ceil(wanted.size / columns)), atEnd: true })
    }
  for (const { names } of stands.filter(({ atEnd }) => !atEnd))
    for (const some of inChunks(names.filter(isNew), columns)) {
      const free = placesFor(taken, some.length, room)
      for (const [at, name] of some.entries()) {
        const [row = 0, column = 0] = (free[at] ?? '').split('/').map(Number)
        put(name, { row, column, atEnd: false })
      }
    }
  return withoutEmptyBoards(places)
}

/** How many boards there are; 0 where nothing stands. */
export const boardsOf = (places: Places): number =>
  Object.values(places).reduce((most, { row }) => Math.max(most, row + 1), 0)
