/** Rows in columns under bands, on as many pages as they take. Millimetres. */
import { fitted, heightMm, type PlacedText } from '#lib/paper/page/fit-text.ts'
import {
  type AskedRow,
  columnsOf,
  GAP,
  type PlacedListRow,
  type Row,
  rowsOf,
} from '#lib/paper/page/list-row.ts'
import { type Box, frameOf, type Paper } from '#lib/paper/page/papers.ts'

const BAND = 7
const BAND_GAP = 2.5
const HEADINGS = 5
/** A row is cut where it takes more of an empty page than this. */
const MOST_OF_PAGE = 0.6

export interface AskedSection {
  /** '': no band stands over its rows. */
  readonly title: string
  /** Its title on a later page. */
  readonly again: string
  /** At the right of its band. */
  readonly note: string
  readonly rows: readonly AskedRow[]
}

export interface PlacedBand {
  readonly box: Box
  readonly texts: readonly PlacedText[]
}

export interface ListPage {
  readonly headings: readonly PlacedText[]
  readonly bands: readonly PlacedBand[]
  readonly rows: readonly PlacedListRow[]
}

export interface ListAsked {
  /** Of the room beside the tick; 1 in all. */
  readonly shares: readonly number[]
  /** A heading for each column; none: no headings. */
  readonly headings: readonly string[]
  readonly sections: readonly AskedSection[]
  /** Left free on the first page, for what is drawn above all rows. */
  readonly lead: number
}

const moved = <One extends Box>(one: One, by: number): One => ({ ...one, y: one.y + by })

const placedRow = ({ height: _, ...row }: Row, y: number): PlacedListRow => ({
  ...row,
  box: moved(row.box, y),
  tick: row.tick && moved(row.tick, y),
  texts: row.texts.map((text) => moved(text, y)),
  blanks: row.blanks.map((line) => moved(line, y)),
  drawing: row.drawing && moved(row.drawing, y),
})

const bandOf = (section: AskedSection, isAgain: boolean, body: Box) => {
  const noteWidth = section.note === '' ? 0 : body.width * 0.4
  const title = fitted(
    { text: isAgain ? section.again : section.title, pt: 11, weight: 'bold', lines: 1 },
    body.width - noteWidth - 2 * GAP - (noteWidth > 0 ? GAP : 0),
  )
  const note = fitted({ text: section.note, pt: 10 }, noteWidth)
  const height = Math.max(BAND, heightMm(title) + 2, heightMm(note) + 2)
  const at = (set: typeof title, x: number, width: number, y: number): PlacedText => ({
    ...{ ...set, x, width, height: heightMm(set) },
    y: y + (height - heightMm(set)) / 2,
  })
  return {
    height,
    placed: (y: number): PlacedBand => ({
      box: { x: body.x, y, width: body.width, height },
      texts: [
        at(title, body.x + GAP, body.width - noteWidth - 2 * GAP - (noteWidth > 0 ? GAP : 0), y),
        ...(noteWidth > 0 ? [at(note, body.x + body.width - noteWidth - GAP, noteWidth, y)] : []),
      ],
    }),
  }
}

/** All rows in their order; a band stands over its first row on each page, and never alone. */
export const listPages = (
  paper: Paper,
  { shares, headings, sections, lead }: ListAsked,
): readonly ListPage[] => {
  const { body } = frameOf(paper)
  const hasTicks = sections.some(({ rows }) => rows.some(({ isTicked }) => isTicked))
  const columns = columnsOf(body, shares, hasTicks)
  const top = headings.length > 0 ? HEADINGS : 0
  const head = (from: number): readonly PlacedText[] =>
    headings.map((text, at) => {
      const column = columns[at] ?? body
      const set = fitted({ text, pt: 9, weight: 'bold' }, column.width)
      return { ...set, x: column.x, y: from, width: column.width, height: heightMm(set) }
    })
  const pages: { headings: readonly PlacedText[]; bands: PlacedBand[]; rows: PlacedListRow[] }[] =
    []
  const begin = () => {
    const from = body.y + (pages.length === 0 ? lead : 0)
    pages.push({ headings: head(from), bands: [], rows: [] })
    return from + top
  }
  const bottom = body.y + body.height
  const most = body.height * MOST_OF_PAGE
  let y = begin()
  for (const section of sections) {
    let isFirst = true
    let isOver = false
    for (const asked of section.rows)
      for (const row of rowsOf(asked, body, columns, most)) {
        const band = section.title === '' ? null : bandOf(section, !isFirst, body)
        const gap = y > body.y + top + (pages.length === 1 ? lead : 0) ? BAND_GAP : 0
        const needs = isOver || band === null ? row.height : gap + band.height + row.height
        const isNew = y + needs > bottom
        if (isNew) y = begin()
        if (band !== null && (isNew || !isOver)) {
          const at = isNew ? y : y + gap
          pages.at(-1)?.bands.push(band.placed(at))
          y = at + band.height
          isOver = true
        }
        pages.at(-1)?.rows.push(placedRow(row, y))
        y += row.height
        isFirst = false
      }
  }
  return pages.filter(({ rows }, at) => rows.length > 0 || at === 0)
}
