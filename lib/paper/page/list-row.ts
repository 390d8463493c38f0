/** A ticked row of a list in its columns, with its blanks; cut where it is too high. Millimetres. */
import {
  type Asked,
  fitted,
  heightMm,
  lineMm,
  type PlacedText,
  stacked,
} from '#lib/paper/page/fit-text.ts'
import { widthEm } from '#lib/paper/page/letter-widths.ts'
import { type Box, MM_PER_PT } from '#lib/paper/page/papers.ts'

const TICK = 5.6
const PAD = 1.3
export const GAP = 3
const BLANK = 7.2
const BLANK_LABEL_PT = 8.5

/** A line to write on, with what is written on it said before and behind. */
export interface AskedBlank {
  readonly of: string
  readonly before: string
  readonly width: number
  readonly behind: string
}

export interface AskedRow {
  readonly id: string
  readonly isTicked: boolean
  /** A cell for each column, texts below one another; a single one goes over all of them. */
  readonly cells: readonly (readonly Asked[])[]
  /** In the last column, above its texts; 0: nothing is drawn. */
  readonly drawing: number
  /** Said beside what is drawn; left away or '': nothing. */
  readonly beside?: string
  /** In the last column, below its texts. */
  readonly blanks: readonly AskedBlank[]
}

export interface PlacedLine extends Box {
  readonly of: string
}

export interface PlacedListRow {
  readonly id: string
  /** It goes on from the page before, or from above. */
  readonly isMore: boolean
  readonly box: Box
  readonly tick: Box | null
  readonly texts: readonly PlacedText[]
  readonly blanks: readonly PlacedLine[]
  readonly drawing: Box | null
}

/** A row without a box to tick, of cells alone. */
export const plainRow = (id: string, ...cells: AskedRow['cells']): AskedRow => ({
  ...{ id, cells, isTicked: false, drawing: 0, blanks: [] },
})

/** Where each column is, beside the boxes to tick where there are any. */
export const columnsOf = (
  { x, width }: Box,
  shares: readonly number[],
  hasTicks: boolean,
): readonly Box[] => {
  const left = hasTicks ? x + TICK + GAP : x
  const room = x + width - left - GAP * (shares.length - 1)
  return shares.map((share, at) => {
    const before = shares.slice(0, at).reduce((sum, one) => sum + one, 0)
    return { x: left + room * before + GAP * at, y: 0, width: room * share, height: 0 }
  })
}

const partsOf = (
  { of, before, width, behind }: AskedBlank,
  room: number,
): readonly { readonly of: string | null; readonly text: string; readonly width: number }[] => {
  const said = (text: string) =>
    text === '' ? [] : [{ of: null, text, width: Math.min(room, widthMm(text)) }]
  return [...said(before), { of, text: '', width: Math.min(room, width) }, ...said(behind)]
}

/** As wide as it is drawn on one line, at the size of what stands beside a blank. */
const widthMm = (text: string): number =>
  widthEm(text, 'regular') * BLANK_LABEL_PT * MM_PER_PT + 0.05

/** Blanks beside one another from a corner, on as many lines as they take. */
const blanksIn = (asked: readonly AskedBlank[], column: Box, top: number) => {
  const texts: PlacedText[] = []
  const lines: PlacedLine[] = []
  let x = column.x
  let y = top
  for (const blank of asked) {
    const parts = partsOf(blank, column.width)
    const whole = parts.reduce((sum, { width }) => sum + width + 1, 0)
    if (x > column.x && x + whole > column.x + column.width) {
      x = column.x
      y += BLANK
    }
    for (const { of, text, width } of parts) {
      if (x > column.x && x + width > column.x + column.width) {
        x = column.x
        y += BLANK
      }
      if (of === null) {
        const set = fitted({ text, pt: BLANK_LABEL_PT }, width)
        const low = Math.max(0, BLANK - lineMm(set.pt) - 0.6)
        texts.push({ ...set, x, y: y + low, width, height: heightMm(set) })
        y += Math.max(0, heightMm(set) - lineMm(set.pt))
      } else lines.push({ of, x, y, width, height: BLANK - 0.6 })
      x += width + 1
    }
    x += 1.5
  }
  return { texts, lines, height: asked.length === 0 ? 0 : y + BLANK - top }
}

const BESIDE_PT = 10

/** What is drawn, and at its right what is said of it; below it where that takes half of the column. */
const drawingIn = (
  { drawing, beside = '' }: Pick<AskedRow, 'drawing' | 'beside'>,
  column: Box,
): { readonly box: Box; readonly texts: readonly PlacedText[]; readonly height: number } => {
  const box = { ...column, height: drawing }
  if (beside === '') return { box, texts: [], height: drawing }
  const wide = widthEm(beside, 'bold') * BESIDE_PT * MM_PER_PT + 0.05
  if (wide > column.width / 2) {
    const asked = { text: beside, pt: BESIDE_PT, weight: 'bold', lines: 2 } as const
    const below = stacked([asked], { ...column, y: column.y + drawing + 0.4 })
    return { box, texts: below.texts, height: drawing + 0.4 + below.height }
  }
  const set = fitted({ text: beside, pt: BESIDE_PT, weight: 'bold' }, wide)
  const height = heightMm(set)
  const x = column.x + column.width - wide
  const y = column.y + Math.max(0, drawing - height)
  return {
    box: { ...box, width: column.width - wide - 1.5 },
    texts: [{ ...set, x, y, width: wide, height }],
    height: Math.max(drawing, height),
  }
}

export interface Row extends PlacedListRow {
  readonly height: number
}

/** One that goes over all columns. */
const over = (columns: readonly Box[]): readonly Box[] => {
  const [first] = columns
  const last = columns.at(-1)
  return first && last ? [{ ...first, width: last.x + last.width - first.x }] : []
}

/** A row as if it stood at the top of the page. */
const rowOf = (asked: AskedRow, body: Box, all: readonly Box[], isMore: boolean): Row => {
  const columns = asked.cells.length === 1 ? over(all) : all
  const last = columns.length - 1
  const texts: PlacedText[] = []
  const heights: number[] = [asked.isTicked ? TICK : 0]
  let drawing: Box | null = null
  let blanks: readonly PlacedLine[] = []
  for (const [at, column] of columns.entries()) {
    let y = PAD
    if (at === last && asked.drawing > 0) {
      const drawn = drawingIn(asked, { ...column, y })
      drawing = drawn.box
      texts.push(...drawn.texts)
      y += drawn.height + 0.8
    }
    const cell = stacked(asked.cells[at] ?? [], { ...column, y })
    texts.push(...cell.texts)
    y += cell.height
    if (at === last) {
      const below = blanksIn(asked.blanks, column, y)
      texts.push(...below.texts)
      blanks = below.lines
      y += below.height
    }
    heights.push(y - PAD)
  }
  const height = Math.max(...heights) + 2 * PAD
  return {
    ...{ id: asked.id, isMore, texts, blanks, drawing, height },
    box: { x: body.x, y: 0, width: body.width, height },
    tick: asked.isTicked && !isMore ? { x: body.x, y: PAD, width: TICK, height: TICK } : null,
  }
}

/** A row that is too high for a page goes on below: its longest cell by its texts. */
export const rowsOf = (
  asked: AskedRow,
  body: Box,
  columns: readonly Box[],
  most: number,
): readonly Row[] => {
  const whole = rowOf(asked, body, columns, false)
  if (whole.height <= most) return [whole]
  const rows: Row[] = []
  let left = asked.cells
  while (left.some((cell) => cell.length > 0)) {
    const isMore = rows.length > 0
    const base = isMore ? { ...asked, drawing: 0, beside: '', blanks: [] } : asked
    let taken = left.map((cell) => cell.slice(0, 1))
    let row = rowOf({ ...base, cells: taken }, body, columns, isMore)
    for (let at = 0; at < left.length; at += 1) {
      const cell = left[at] ?? []
      while ((taken[at]?.length ?? 0) < cell.length) {
        const more = taken.map((one, of) => (of === at ? cell.slice(0, one.length + 1) : one))
        const next = rowOf({ ...base, cells: more }, body, columns, isMore)
        if (next.height > most) break
        taken = more
        row = next
      }
    }
    rows.push(row)
    const done = taken
    left = left.map((cell, at) => cell.slice(done[at]?.length ?? 0))
  }
  return rows
}
