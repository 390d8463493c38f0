/**
 * What labels are printed on, by dimension alone: sheets with so many across and down, rolls, and
 * plain paper that is cut. Millimetres from the sheet's left top corner. No standard sets any of them;
 * where labels begin on a sheet is what is common, from memory, and is held against a ruler by the
 * offset that a printer needs.
 */
import { type Box, PAPER_MM, type Paper } from '#lib/paper/page/papers.ts'

const MM_PER_IN = 25.4

export interface Sheet {
  readonly kind: 'sheet'
  readonly paper: Paper
  readonly across: number
  readonly down: number
  readonly width: number
  readonly height: number
  readonly left: number
  readonly top: number
  /** From the left edge of one to that of the next, and from top to top. */
  readonly pitch: { readonly x: number; readonly y: number }
  /** Plain paper: each label has a line around it to cut along. */
  readonly isCut: boolean
  readonly source: 'common practice, from memory'
}

export interface Roll {
  readonly kind: 'roll'
  readonly width: number
  /** null: it is cut off where the label ends. */
  readonly height: number | null
  readonly source: 'common practice, from memory'
}

const source = 'common practice, from memory'

type Grid = Pick<Sheet, 'paper' | 'across' | 'down' | 'width' | 'height' | 'pitch'>

/** In the middle of its paper: margins are the same on both sides. */
const sheet = (grid: Grid, isCut = false): Sheet => {
  const { width, height } = PAPER_MM[grid.paper]
  return {
    kind: 'sheet',
    ...grid,
    left: (width - grid.width - (grid.across - 1) * grid.pitch.x) / 2,
    top: (height - grid.height - (grid.down - 1) * grid.pitch.y) / 2,
    isCut,
    source,
  }
}

const inches = (value: number): number => value * MM_PER_IN

const letter = (across: number, down: number, width: number, height: number, pitchX: number) =>
  sheet({
    paper: 'letter',
    across,
    down,
    width: inches(width),
    height: inches(height),
    pitch: { x: inches(pitchX), y: inches(height) },
  })

const a4 = (across: number, down: number, width: number, height: number, gap: number) =>
  sheet({ paper: 'a4', across, down, width, height, pitch: { x: width + gap, y: height } })

const cut = (paper: Paper): Sheet =>
  sheet({ paper, across: 2, down: 5, width: 94, height: 48, pitch: { x: 97, y: 51 } }, true)

export const LABEL_STOCK = {
  'cut-letter': cut('letter'),
  'letter-10': letter(2, 5, 4, 2, 4.1875),
  'letter-6': letter(2, 3, 4, 10 / 3, 4.1875),
  'letter-30': letter(3, 10, 2.625, 1, 2.75),
  'cut-a4': cut('a4'),
  'a4-8': a4(2, 4, 99.1, 67.7, 2.5),
  'a4-21': a4(3, 7, 63.5, 38.1, 2.54),
  'roll-2x2': { kind: 'roll', width: inches(2), height: inches(2), source },
  'roll-2x3': { kind: 'roll', width: inches(2), height: inches(3), source },
  'roll-62': { kind: 'roll', width: 62, height: null, source },
} as const satisfies Readonly<Record<string, Sheet | Roll>>

export type StockId = keyof typeof LABEL_STOCK
export type Stock = Sheet | Roll

export const STOCK_IDS = Object.keys(LABEL_STOCK) as readonly StockId[]

export const isStock = (id: unknown): id is StockId => STOCK_IDS.some((one) => one === id)

/** How many labels a sheet has; a roll's has one. */
export const perSheet = (stock: Stock): number =>
  stock.kind === 'sheet' ? stock.across * stock.down : 1

/** How much of a label's edge stays free, so that a print that is a little off is not cut. */
export const LABEL_PAD = 1.8

/** Where the printer is off: what has to be added, millimetres. */
export interface Offset {
  readonly x: number
  readonly y: number
}

export const NO_OFFSET: Offset = { x: 0, y: 0 }

/** More is no matter of a printer: other labels lie in it. */
export const MOST_OFFSET = 6
export const OFFSET_STEP = 0.5

/** Each label of a sheet, from the left, from the top. */
export const labelBoxes = (
  { across, down, width, height, left, top, pitch }: Sheet,
  offset: Offset = NO_OFFSET,
): readonly Box[] =>
  Array.from({ length: across * down }, (_, at) => ({
    x: left + (at % across) * pitch.x + offset.x,
    y: top + Math.floor(at / across) * pitch.y + offset.y,
    width,
    height,
  }))

export interface LabelPage<One> {
  readonly labels: readonly (One & { readonly at: Box })[]
}

/**
 * Labels one after the other, on as many sheets as it takes; `first` of the first sheet, counted from
 * 1, is the first that is still there. A roll's pages have one each.
 */
export const labelPages = <One extends object>(
  labels: readonly One[],
  stock: Stock,
  { first, offset, height }: { first: number; offset: Offset; height: number },
): readonly LabelPage<One>[] => {
  if (stock.kind === 'roll')
    return labels.map((one) => ({
      labels: [{ ...one, at: { ...offset, width: stock.width, height } }],
    }))
  const boxes = labelBoxes(stock, offset)
  const used = Math.min(Math.max(1, first), boxes.length) - 1
  const pages: (One & { readonly at: Box })[][] = []
  for (const [nth, one] of labels.entries()) {
    const place = nth + used
    const box = boxes[place % boxes.length]
    if (box === undefined) continue
    const page = Math.floor(place / boxes.length)
    pages[page] = [...(pages[page] ?? []), { ...one, at: box }]
  }
  return pages.map((all) => ({ labels: all }))
}
