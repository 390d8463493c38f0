/** Where everything of the set-up sheet stands: the line from above to scale, each pan's row beside it. */
import { type Stand, WELL_IN } from '#lib/measure/well-layout.ts'
import { fitted, heightMm, inBox, lineMm, type PlacedText } from '#lib/paper/page/fit-text.ts'
import { inRuns, paged } from '#lib/paper/page/pages.ts'
import { type Box, frameOf, LEAST_PT, type Paper } from '#lib/paper/page/papers.ts'
import {
  type Columns,
  columnsOf,
  HEADING,
  type Headings,
  movedBy,
  type PlacedRow,
  type Row,
  type RowTexts,
  rowOf,
  TICK,
} from '#lib/paper/set-up/row-layout.ts'

/** An inch of paper is a foot of the line. */
export const SCALE = 12

/** Millimetres. */
const mmOf = (inches: number): number => (inches * 25.4) / SCALE
const WELL = { along: mmOf(WELL_IN.along), across: mmOf(WELL_IN.across) }
const LABEL = 5
const WELL_GAP = 2
const LEADER = 6
const LABEL_WIDTH = WELL.across + LEADER - 1

export interface WellTexts {
  readonly label: string
  /** Of the same well on another page. */
  readonly again: string
  readonly pans: readonly { readonly stand: Stand; readonly texts: RowTexts }[]
}

export interface PlacedPan {
  readonly number: number
  readonly box: Box
  /** Its number, and its short name where that fits. */
  readonly texts: readonly PlacedText[]
}

export type Point = readonly [x: number, y: number]

export interface PlacedWell {
  readonly label: PlacedText
  readonly opening: Box
  readonly pans: readonly PlacedPan[]
  readonly rows: readonly PlacedRow[]
  readonly leaders: readonly (readonly Point[])[]
}

export interface SetUpPage {
  readonly headings: Headings
  readonly wells: readonly PlacedWell[]
}

const FACE_PAD = 0.8

/** In the middle of a pan: its number, and its short name where that fits at the least size. */
const faceOf = ({ number, short }: RowTexts, box: Box): readonly PlacedText[] => {
  const inner = { width: box.width - 2 * FACE_PAD, height: box.height - 2 * FACE_PAD }
  const head = { text: [String(number)], height: lineMm(11) }
  const name = inBox(short, { ...inner, height: inner.height - head.height }, 9.5)
  const set = [
    inBox(head.text, inner, 11, 'bold') ?? {
      pt: LEAST_PT,
      weight: 'bold' as const,
      lines: head.text,
    },
    ...(name === null ? [] : [name]),
  ]
  let y = box.y + (box.height - set.reduce((sum, one) => sum + heightMm(one), 0)) / 2
  return set.map((one) => {
    const placed = { ...one, x: box.x, y, width: box.width, height: heightMm(one) }
    y += placed.height
    return placed
  })
}

/** The line runs down the page, its left end above; its back is at the right. */
const onPaper = ({ left, top, along, across }: Stand, opening: Box): Box => ({
  x: opening.x + opening.width - mmOf(top + across),
  y: opening.y + mmOf(left),
  width: mmOf(across),
  height: mmOf(along),
})

interface Block {
  readonly well: WellTexts
  readonly isAgain: boolean
  readonly rows: readonly Row[]
  readonly height: number
}

const sumOf = (rows: readonly { readonly height: number }[]): number =>
  rows.reduce((sum, { height }) => sum + height, 0)

const blocksOf = (well: WellTexts, columns: Columns, height: number): readonly Block[] =>
  inRuns(
    well.pans.map(({ texts }) => rowOf(texts, columns)),
    height,
  ).map((rows, run) => ({
    well,
    isAgain: run > 0,
    rows,
    height: Math.max(LABEL + WELL.along, sumOf(rows)),
  }))

const placedWell = ({ well, isAgain, rows, height }: Block, x: number, top: number): PlacedWell => {
  const set = fitted(
    { text: isAgain ? well.again : well.label, pt: 10, weight: 'bold' },
    LABEL_WIDTH,
  )
  const opening = { x, y: top + LABEL, width: WELL.across, height: WELL.along }
  const pans = well.pans.map(({ stand, texts }) => {
    const box = onPaper(stand, opening)
    return { number: texts.number, box, texts: faceOf(texts, box) }
  })
  // Rows are as long as their pans where there is room, so that they stand side by side.
  const spare = (height - sumOf(rows)) / Math.max(1, rows.length)
  let y = top
  const placed = rows.map((row): PlacedRow => {
    const tall = row.height + spare
    const inner = y + spare / 2
    const one = {
      number: row.number,
      box: { ...row.box, y, height: tall },
      tick: { ...row.tick, y: inner + row.tick.y },
      texts: movedBy(row.texts, inner),
      blanks: movedBy(row.blanks, inner),
    }
    y += tall
    return one
  })
  const right = x + WELL.across
  const leaders = placed.map(({ number, tick }): readonly Point[] => {
    const own = well.pans.find(({ texts }) => texts.number === number)
    const beside = well.pans.filter(({ stand }) => stand.left === own?.stand.left)
    const nth = beside.findIndex(({ texts }) => texts.number === number)
    const { left, along } = own?.stand ?? { left: 0, along: 0 }
    const from = opening.y + mmOf(left + (along * (nth + 0.5)) / beside.length)
    const to = tick.y + TICK / 2
    return [
      [right, from],
      [right + LEADER * 0.3, from],
      [right + LEADER * 0.7, to],
      [tick.x, to],
    ]
  })
  const label = { ...set, x, y: top + 0.4, width: LABEL_WIDTH, height: heightMm(set) }
  return { label, opening, pans, rows: placed, leaders }
}

/** The whole line on as many pages as it takes; a well whose rows don't fit is drawn on each again. */
export const setUpPages = (paper: Paper, wells: readonly WellTexts[]): readonly SetUpPage[] => {
  const { body } = frameOf(paper)
  const columns = columnsOf(body, body.x + WELL.across + LEADER)
  const { pan, tool, load, loaded, read, initials } = columns
  const room = body.height - HEADING
  const blocks = wells.flatMap((well) => blocksOf(well, columns, room))
  return paged(blocks, room, WELL_GAP).map((page) => ({
    headings: { pan, tool, load, loaded, read, initials },
    wells: page.map((block) => placedWell(block, body.x, body.y + HEADING + block.y)),
  }))
}
