/** A pan's row on the set-up sheet: its columns, its blanks, and what stands below them. */
import {
  type Asked,
  fitted,
  heightMm,
  inBox,
  type PlacedText,
  stacked,
} from '#lib/paper/page/fit-text.ts'
import { type Box, LEAST_PT } from '#lib/paper/page/papers.ts'

/** Millimetres. */
export const TICK = 5
const ROW_PAD = 1.2
const BLANK_HEIGHT = 8.5
export const HEADING = 5
const COLUMN_GAP = 2.5
/** Of the room beside the line: what it is, what it is taken with, what goes in; blanks share the rest. */
const BLANKS = { loaded: 0.36, read: 0.34 } as const
const BLANK_GAP = 1.5
const PARTS = { pan: 0.27, tool: 0.19, load: 0.24 } as const

/** What is said of a pan, in words. */
export interface RowTexts {
  readonly number: number
  readonly name: string
  readonly short: readonly string[]
  readonly pan: string
  readonly tool: readonly [name: string, take: string]
  /** Loads of a plan, portions × portion, "= total", its weight, and what else; any may be ''. */
  readonly load: Readonly<Record<'loads' | 'times' | 'total' | 'weight' | 'more' | 'wrong', string>>
  readonly limit: string
  /** It is read, so its temperature has a blank. */
  readonly isRead: boolean
  /** Below the row, over all its columns. */
  readonly notes: readonly string[]
  /** Before a blank for the time at which it has to be out; null: it has none. */
  readonly outBy: string | null
}

export type BlankOf = 'loaded' | 'read' | 'initials' | 'out'

export interface Blank extends Box {
  readonly of: BlankOf
}

export interface PlacedRow {
  readonly number: number
  readonly box: Box
  readonly tick: Box
  readonly texts: readonly PlacedText[]
  readonly blanks: readonly Blank[]
}

/** Where the headings of the columns stand. */
export type Headings = Readonly<
  Record<'pan' | 'tool' | 'load' | 'loaded' | 'read' | 'initials', Box>
>

export type Columns = Headings & { readonly notes: Box; readonly tick: number }

/** @param tick millimetres from the page's left edge, where the rows begin */
export const columnsOf = ({ x, y, width }: Box, tick: number): Columns => {
  const left = tick + TICK + 1.5
  const room = x + width - left
  const at = (from: number, wide: number): Box => ({ x: from, y, width: wide, height: HEADING })
  const pan = room * PARTS.pan
  const tool = room * PARTS.tool
  const load = room * PARTS.load
  const blanks = room - pan - tool - load - 2 * BLANK_GAP
  const [loaded, read] = [blanks * BLANKS.loaded, blanks * BLANKS.read]
  const [toolAt, loadAt, blankAt] = [left + pan, left + pan + tool, left + pan + tool + load]
  const readAt = blankAt + loaded + BLANK_GAP
  const initialsAt = readAt + read + BLANK_GAP
  return {
    tick,
    pan: at(left, pan - COLUMN_GAP),
    tool: at(toolAt, tool - COLUMN_GAP),
    load: at(loadAt, load - COLUMN_GAP),
    loaded: at(blankAt, loaded),
    read: at(readAt, read),
    initials: at(initialsAt, x + width - initialsAt),
    notes: at(left, blankAt - left - COLUMN_GAP),
  }
}

/** A row as if it stood at the top, with its height. */
export interface Row extends PlacedRow {
  readonly height: number
}

export const movedBy = <One extends { readonly y: number }>(all: readonly One[], by: number) =>
  all.map((one) => ({ ...one, y: one.y + by }))

const LOAD = { pt: 10, weight: 'bold' } as const

/** So small a sum still stands on one line. */
const SMALLEST_SUM_PT = 9

const isOneLine = (text: string, column: Box): boolean =>
  (inBox([text], { width: column.width, height: BLANK_HEIGHT }, LOAD.pt, LOAD.weight)?.pt ?? 0) >=
  SMALLEST_SUM_PT

export const rowOf = (texts: RowTexts, columns: Columns): Row => {
  const { name, number, pan, tool, load, limit, isRead, notes, outBy } = texts
  const put = (column: Box, asked: readonly Asked[]) => stacked(asked, { ...column, y: ROW_PAD })
  const { loads, times, total, weight, more, wrong } = load
  const what = put(columns.pan, [
    { text: `${number} ${name}`, pt: 11, weight: 'bold', lines: 2 },
    { text: pan, pt: 9 },
  ])
  const taken = put(columns.tool, [
    { text: tool[0], pt: 10, weight: 'bold', lines: 2 },
    { text: tool[1], pt: 9.5 },
  ])
  const goesIn = put(columns.load, [
    { text: loads, pt: 9, weight: 'bold', lines: 2 },
    ...(isOneLine(`${times} ${total}`, columns.load)
      ? [{ text: `${times} ${total}`, ...LOAD }]
      : [
          { text: times, ...LOAD },
          { text: total, ...LOAD, lines: 2 },
        ]),
    { text: weight, pt: 9 },
    { text: more, pt: 9, weight: 'bold', lines: 2 },
    { text: wrong, pt: 9, weight: 'bold', lines: 2 },
  ])
  const blank = (of: Exclude<BlankOf, 'out'>): Blank => ({
    ...columns[of],
    of,
    y: ROW_PAD,
    height: BLANK_HEIGHT,
  })
  const saidAt = ROW_PAD + (isRead ? BLANK_HEIGHT + 0.3 : 1)
  const said = stacked([{ text: limit, pt: LEAST_PT, lines: 2 }], { ...columns.read, y: saidAt })
  // A plan says more of what goes in: then notes stand beside that, not below it.
  const isBeside = loads !== ''
  const above = isBeside ? [what, taken] : [what, taken, goesIn]
  const columnsEnd = ROW_PAD + Math.max(...above.map((one) => one.height))
  const blanksEnd = Math.max(ROW_PAD + BLANK_HEIGHT, saidAt + said.height)
  const noted = stacked(
    notes.map((text) => ({ text, pt: LEAST_PT })),
    {
      ...columns.notes,
      ...(isBeside ? { width: columns.tool.x + columns.tool.width - columns.notes.x } : {}),
      y: columnsEnd + 0.4,
    },
  )
  const notesEnd = columnsEnd + (notes.length > 0 ? 0.4 + noted.height : 0)
  const outText = outBy === null ? null : fitted({ text: outBy, pt: 9, weight: 'bold' }, 20)
  const outTop = notesEnd + 1
  const outHeight = outText === null ? 0 : 7
  const ends = notesEnd + (outText === null ? 0 : 1 + outHeight)
  const height = Math.max(ends, blanksEnd, ROW_PAD + goesIn.height) + ROW_PAD
  return {
    number,
    height,
    box: {
      x: columns.tick,
      y: 0,
      width: columns.initials.x + columns.initials.width - columns.tick,
      height,
    },
    tick: { x: columns.tick, y: ROW_PAD, width: TICK, height: TICK },
    texts: [
      ...[what, taken, goesIn, said, noted].flatMap((one) => one.texts),
      ...(outText === null
        ? []
        : [
            {
              ...outText,
              x: columns.notes.x,
              y: outTop + (outHeight - heightMm(outText)) / 2,
              width: 20,
              height: heightMm(outText),
            },
          ]),
    ],
    blanks: [
      blank('loaded'),
      ...(isRead ? [blank('read')] : []),
      blank('initials'),
      ...(outText === null
        ? []
        : [
            {
              of: 'out',
              x: columns.notes.x + 20,
              y: outTop,
              width: 24,
              height: outHeight,
            } as const,
          ]),
    ],
  }
}
