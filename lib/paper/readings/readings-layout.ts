/** A log of readings by hand: a row for each thing that is read, three rounds beside one another. Millimetres. */
import { fitted, heightMm, lineMm, type PlacedText, stacked } from '#lib/paper/page/fit-text.ts'
import type { Weight } from '#lib/paper/page/letter-widths.ts'
import type { ListPage } from '#lib/paper/page/list-layout.ts'
import type { PlacedLine, PlacedListRow } from '#lib/paper/page/list-row.ts'
import { type Box, frameOf, LEAST_PT, type Paper } from '#lib/paper/page/papers.ts'

export interface AskedReading {
  readonly id: string
  /** '': it is written in by hand, and so is its limit. */
  readonly name: string
  readonly limit: string
  /** Behind the blank of what is read; null: nothing is, its hour alone. */
  readonly unit: string | null
}

export interface AskedReadings {
  readonly rows: readonly AskedReading[]
  /** What each round is called. */
  readonly rounds: readonly string[]
  readonly heads: Readonly<Record<'what' | 'time' | 'read' | 'initials', string>>
}

const ROUNDS_BESIDE = 3
const NAME = 46
const GAP = 4
const PAD = 1.2
/** What a hand needs in a kitchen: common practice, no source. */
const BLANK = 8.4
const TIME = 12.5
const READ = 11.5
const UNIT = 6.2
const PART_GAP = 1.2
const BLOCK_GAP = 5

interface Row extends PlacedListRow {
  readonly height: number
}

type Columns = readonly { readonly x: number; readonly width: number }[]

const columnsOf = (body: Box): Columns => {
  const width = (body.width - NAME) / ROUNDS_BESIDE - GAP
  return Array.from({ length: ROUNDS_BESIDE }, (_, at) => ({
    x: body.x + NAME + GAP + at * (width + GAP),
    width,
  }))
}

/** Where the parts of a round stand. */
const partsOf = ({ x, width }: Columns[number]) => {
  const read = x + TIME + PART_GAP
  const unit = read + READ + 0.8
  const initials = unit + UNIT + PART_GAP
  return {
    time: { x, width: TIME },
    read: { x: read, width: READ },
    unit: { x: unit, width: UNIT },
    initials: { x: initials, width: x + width - initials },
  }
}

const put = (
  text: string,
  pt: number,
  box: { x: number; width: number },
  y: number,
  weight: Weight = 'bold',
) => {
  const set = fitted({ text, pt, weight }, box.width)
  return { ...set, ...box, y, height: heightMm(set) }
}

const rowBox = (body: Box, height: number) => ({ x: body.x, y: 0, width: body.width, height })

const headOf = (
  { heads }: AskedReadings,
  rounds: readonly string[],
  columns: Columns,
  body: Box,
  id: string,
): Row => {
  const texts: PlacedText[] = []
  let height = 0
  for (const [at, round] of rounds.entries()) {
    const column = columns[at]
    if (column === undefined) continue
    const title = put(round, 10, column, PAD)
    const parts = partsOf(column)
    const below = PAD + title.height + 0.6
    const under = (['time', 'read', 'initials'] as const).map((of) =>
      put(heads[of], LEAST_PT, parts[of], below, 'regular'),
    )
    texts.push(title, ...under)
    height = Math.max(height, ...under.map((one) => one.y + one.height))
  }
  const what = put(heads.what, 10, { x: body.x, width: NAME }, PAD)
  texts.push(what)
  height = Math.max(height, what.y + what.height) + PAD
  return {
    ...{ id, isMore: false, texts, blanks: [], drawing: null, tick: null, height },
    box: rowBox(body, height),
  }
}

const rowOf = (asked: AskedReading, count: number, columns: Columns, body: Box): Row => {
  const { id, name, limit, unit } = asked
  const own = stacked(
    [
      { text: name, pt: 11, weight: 'bold' },
      { text: limit, pt: 9 },
    ],
    { x: body.x, y: PAD, width: NAME },
  )
  const height = Math.max(BLANK + PAD, own.height + 2 * PAD)
  const top = height - BLANK - 0.6
  const line = (of: string, { x, width }: { x: number; width: number }): PlacedLine => ({
    ...{ of, x, width, y: top, height: BLANK },
  })
  const blanks: PlacedLine[] = name === '' ? [line('what', { x: body.x, width: NAME - GAP })] : []
  const texts: PlacedText[] = [...own.texts]
  for (const column of columns.slice(0, count)) {
    const parts = partsOf(column)
    blanks.push(line('time', parts.time))
    if (unit !== null) {
      blanks.push(line('read', parts.read))
      texts.push(put(unit, LEAST_PT, parts.unit, top + BLANK - lineMm(LEAST_PT), 'regular'))
    }
    blanks.push(line('initials', parts.initials))
  }
  return {
    ...{ id, isMore: false, texts, blanks, drawing: null, tick: null, height },
    box: rowBox(body, height),
  }
}

const moved = ({ height: _, ...row }: Row, by: number): PlacedListRow => {
  const down = <One extends Box>(one: One): One => ({ ...one, y: one.y + by })
  return { ...row, box: down(row.box), texts: row.texts.map(down), blanks: row.blanks.map(down) }
}

/** All rows under each three rounds; the head of those stands on each page of theirs. */
export const readingsPages = (paper: Paper, asked: AskedReadings): readonly ListPage[] => {
  const { body } = frameOf(paper)
  const columns = columnsOf(body)
  const pages: { headings: []; bands: []; rows: PlacedListRow[] }[] = []
  const bottom = body.y + body.height
  let y = bottom
  for (let from = 0; from < asked.rounds.length; from += ROUNDS_BESIDE) {
    const rounds = asked.rounds.slice(from, from + ROUNDS_BESIDE)
    const head = headOf(asked, rounds, columns, body, `rounds-${from + 1}`)
    const rows = asked.rows.map((row) => rowOf(row, rounds.length, columns, body))
    const whole = rows.reduce((sum, { height }) => sum + height, head.height)
    const begin = (isNew: boolean) => {
      if (isNew) {
        pages.push({ headings: [], bands: [], rows: [] })
        y = body.y
      }
      pages.at(-1)?.rows.push(moved(head, y))
      y += head.height
    }
    // Three rounds stay together where a page holds them.
    begin(from === 0 || y + BLOCK_GAP + Math.min(whole, body.height) > bottom)
    for (const row of rows) {
      if (y + row.height > bottom) begin(true)
      pages.at(-1)?.rows.push(moved(row, y))
      y += row.height
    }
    y += BLOCK_GAP
  }
  return pages
}
