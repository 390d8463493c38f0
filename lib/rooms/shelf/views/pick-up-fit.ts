/**
 * How large the numbers of the pick-up screen can be set: worked out from what stands there and from
 * the shape of its box, so that it is read from as far as the screen allows. Lengths are shares of
 * the box's height, but where they say em: those are of the type itself, as its style sheet draws it.
 */

/** Of Atkinson Hyperlegible Next at weight 800, figures of one width; the widest of A to H. */
const FIGURE_EM = 0.63
const DASH_EM = 0.44

/** A wrap with its letter and the room beside it, and what stands around a tile's number. */
const WRAP_EM = 0.92
const TILE_EM = 0.38
/** Room for what counts the tickets beyond. */
export const MORE_EM = 2.6
/** An open wrap with its sides and its flaps. */
const OPEN_EM = 0.9

/** Heights: a compartment of the shelf with its plank, an open wrap, a number of the queue. */
const SHELF_ROW_EM = 1.48
const OPEN_ROW_EM = 1.85
const QUEUE_ROW_EM = 1.2
const QUEUE_SIDES_EM = 0.5

/** A shelf has at least two planks; largest sizes of what is less than ready. */
const LEAST_ROWS = 2
const MOST_QUEUED = 0.1
const MOST_RIDING = 0.13

/** The pans, with the floor below them and its words. */
const LINE = 0.3
const FLOOR = 0.1
/** The queue ends before the shelf: only the line leads there. */
const BEFORE_SHELF = 0.04

/** A browser rounds widths: no plank is quite full. */
const ROUNDED = 0.995

/** Sizes are tried from the largest down, each so much of the one before. */
const STEP = 0.98

const figuresEm = (figures: number): number => figures * FIGURE_EM

/** Width of a ticket's tile on the shelf, em. */
export const tileEm = (figures: number, letters: number): number =>
  figuresEm(figures) + TILE_EM + letters * WRAP_EM

/** Width of an open wrap over the line, em. */
export const openEm = (figures: number): number => figuresEm(figures + 1) + DASH_EM + OPEN_EM

export interface Fitted {
  /** Size of the type, a share of the box's height. */
  readonly size: number
  /** How many stand in each row, in order. */
  readonly rows: readonly number[]
}

/** How many of these widths stand in each row, one after the other. */
const rowsOf = (widths: readonly number[], most: number): readonly number[] => {
  const rows: number[] = []
  let used = Number.POSITIVE_INFINITY
  for (const width of widths) {
    if (used + width > most) {
      rows.push(0)
      used = 0
    }
    rows[rows.length - 1] = (rows.at(-1) ?? 0) + 1
    used += width
  }
  return rows
}

/**
 * The largest size at which tiles of these widths (em) stand in rows in a box, and its rows.
 * `across` and `down` are the box's sides; `from` is the size that is tried first.
 */
const largest = (
  widths: readonly number[],
  { across, down, rowEm, from }: Record<'across' | 'down' | 'rowEm' | 'from', number>,
): Fitted => {
  const widest = Math.max(0, ...widths)
  for (let size = from; ; size *= STEP) {
    const rows = rowsOf(widths, across / size)
    if (widest * size <= across && rows.length * rowEm * size <= down) return { size, rows }
  }
}

export interface Compartment {
  /** Which tile stands in it; null where none does. */
  readonly tile: number | null
  /** Its width. */
  readonly em: number
}

export interface FittedShelf {
  readonly size: number
  /** In order; each plank's are as wide together as the others'. */
  readonly compartments: readonly Compartment[]
}

const total = (widths: readonly number[]): number => widths.reduce((sum, each) => sum + each, 0)

/** The shelf's tiles, widths in em, in a box that is `aspect` times as wide as high (above 0). */
export const fitShelf = (widths: readonly number[], aspect: number): FittedShelf => {
  const across = aspect * ROUNDED
  const { size, rows } = largest(widths, {
    across,
    down: 1,
    rowEm: SHELF_ROW_EM,
    from: 1 / LEAST_ROWS / SHELF_ROW_EM,
  })
  const ends = rows.map((_, row) => total(rows.slice(0, row + 1)))
  const planks = ends.map((end, row) =>
    widths
      .slice(ends[row - 1] ?? 0, end)
      .map((em, at) => ({ tile: (ends[row - 1] ?? 0) + at, em })),
  )
  const lengths = planks.map((plank) => total(plank.map(({ em }) => em)))
  const longest = planks.length < LEAST_ROWS ? across / size : Math.max(...lengths)
  while (planks.length < LEAST_ROWS) planks.push([])
  return {
    size,
    compartments: planks.flatMap((plank, row): Compartment[] => {
      const rest = longest - (lengths[row] ?? 0)
      // A place is left empty where a ticket could stand.
      return rest >= Math.min(longest, ...widths) ? [...plank, { tile: null, em: rest }] : plank
    }),
  }
}

export interface FittedPath {
  /** Of the queue's numbers. */
  readonly size: number
  /** Rows of the queue's floor, from its top to the line's end. */
  readonly rows: number
  /** How many of them, from the top, the queue goes along; 0 where it only goes up. */
  readonly along: number
  /** How many numbers fit side by side there. */
  readonly columns: number
  /** Row and column of each number, from 1; first the one at the line's left end. */
  readonly places: readonly (readonly [row: number, column: number])[]
  /** Width and height of a number's place, shares of the box's height. */
  readonly cell: readonly [width: number, height: number]
  readonly riding: Fitted
}

/** Up from the line's left end; then along the top, and back along the row above. */
const placesOf = (rows: number, columns: number, along: number): FittedPath['places'] => {
  const turn = Math.max(1, along)
  const up = Array.from({ length: rows - turn + 1 }, (_, at) => [rows - at, 1] as const)
  const across = Array.from({ length: columns }, (_, at) => at + 1)
  if (along === 0) return up
  const out = across.slice(1).map((column) => [turn, column] as const)
  const back = [...across].reverse().map((column) => [1, column] as const)
  return along === 1 ? [...up, ...out] : [...up, ...out, ...back]
}

/**
 * The queue, which goes up from the line's left end and turns where it is long, and the open wraps
 * in what is left over the line. `queued` numbers of at most `figures` figures; `open` are widths, em;
 * neither is larger than `most`, as what is ready is.
 */
export const fitPath = (
  queued: number,
  figures: number,
  open: readonly number[],
  { aspect, most }: { readonly aspect: number; readonly most: number },
): FittedPath => {
  const cellEm = figuresEm(figures) + QUEUE_SIDES_EM
  const wide = Math.max(1, aspect)
  for (let size = Math.min(most, MOST_QUEUED * wide); ; size *= STEP) {
    const rows = Math.floor((1 - FLOOR) / (QUEUE_ROW_EM * size))
    const columns = Math.floor((aspect - BEFORE_SHELF) / (cellEm * size))
    for (const along of [0, 1, 2]) {
      const all = placesOf(rows, columns, along)
      if (columns < 1 || all.length < queued) continue
      const cell = [cellEm * size, (1 - FLOOR) / rows] as const
      const riding = largest(open, {
        across: aspect - cell[0],
        down: 1 - LINE - along * cell[1],
        rowEm: OPEN_ROW_EM,
        from: Math.min(most, MOST_RIDING * wide),
      })
      return { size, rows, along, columns, places: all.slice(0, queued), cell, riding }
    }
  }
}
