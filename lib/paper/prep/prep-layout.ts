/** Where everything of the prep sheet stands: the line with its names, then the tasks by period. */
import { lineStrip, type PlacedStrip, type StripPan } from '#lib/paper/page/line-strip.ts'
import { type AskedSection, type ListPage, listPages } from '#lib/paper/page/list-layout.ts'
import { frameOf, type Paper } from '#lib/paper/page/papers.ts'

/** When and who, what and how much, and where it goes with what is read. */
const SHARES = [0.11, 0.49, 0.4] as const
const STRIP = 13
/** Of a row, above what is said of its pan. */
export const SMALL_STRIP = 6

export interface PrepPages {
  /** On the first page. */
  readonly strip: PlacedStrip
  readonly pages: readonly ListPage[]
}

export const prepPages = (
  paper: Paper,
  wells: readonly (readonly StripPan[])[],
  sections: readonly AskedSection[],
): PrepPages => {
  const { body } = frameOf(paper)
  return {
    strip: lineStrip(wells, { ...body, height: STRIP }, true),
    pages: listPages(paper, { shares: SHARES, headings: [], sections, lead: STRIP + 3 }),
  }
}
