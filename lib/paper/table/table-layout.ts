/** Rows of texts in columns on as many pages as it takes; headings stand on each. */
import { type Asked, fitted, heightMm, type PlacedText, stacked } from '#lib/paper/page/fit-text.ts'
import { paged } from '#lib/paper/page/pages.ts'
import { type Box, frameOf, type Paper } from '#lib/paper/page/papers.ts'

export interface Column {
  readonly title: string
  /** Of the page's width; together 1. */
  readonly share: number
}

/** A row in the columns, or over all of them. */
export type TableRow =
  | { readonly kind: 'cells'; readonly cells: readonly (readonly Asked[])[] }
  | { readonly kind: 'over'; readonly texts: readonly Asked[]; readonly isHeading: boolean }

export interface PlacedRow {
  readonly box: Box
  readonly isHeading: boolean
  readonly texts: readonly PlacedText[]
}

export interface TablePage {
  readonly headings: readonly PlacedText[]
  readonly rows: readonly PlacedRow[]
}

const HEADING_MM = 6
const COLUMN_GAP = 2.5
const PAD = 1.1
const ROW_GAP = 0

const boxesOf = (
  columns: readonly Column[],
  { x, y, width }: Box,
): readonly Omit<Box, 'height'>[] => {
  let left = x
  return columns.map(({ share }) => {
    const box = { x: left, y, width: width * share - COLUMN_GAP }
    left += width * share
    return box
  })
}

/** As much of a text as a page has room for in one piece: longer ones go on in a row of their own. */
export const tablePages = (
  paper: Paper,
  columns: readonly Column[],
  rows: readonly TableRow[],
): readonly TablePage[] => {
  const { body } = frameOf(paper)
  const hasHeadings = columns.some(({ title }) => title !== '')
  const headingMm = hasHeadings ? HEADING_MM : 0
  const boxes = boxesOf(columns, body)
  const headings = hasHeadings
    ? columns.flatMap(({ title }, at): readonly PlacedText[] => {
        const box = boxes[at]
        if (box === undefined || title === '') return []
        const set = fitted({ text: title, pt: 9, weight: 'bold' }, box.width)
        return [{ ...set, ...box, height: heightMm(set) }]
      })
    : []
  const laid = rows.map((row) => {
    const parts =
      row.kind === 'over'
        ? [stacked(row.texts, { x: body.x, y: PAD, width: body.width })]
        : row.cells.map((asked, at) => {
            const box = boxes[at] ?? { x: body.x, y: 0, width: body.width }
            return stacked(asked, { ...box, y: PAD })
          })
    return {
      isHeading: row.kind === 'over' && row.isHeading,
      texts: parts.flatMap(({ texts }) => texts),
      height: 2 * PAD + Math.max(0, ...parts.map(({ height }) => height)),
    }
  })
  const top = body.y + headingMm
  return paged(laid, body.height - headingMm, ROW_GAP).map((page) => ({
    headings,
    rows: page.map(({ isHeading, texts, height, y }) => ({
      isHeading,
      box: { x: body.x, y: top + y, width: body.width, height },
      texts: texts.map((text) => ({ ...text, y: text.y + top + y })),
    })),
  }))
}
