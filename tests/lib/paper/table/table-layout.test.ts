import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Box, frameOf, LEAST_PT, PAPERS } from '#lib/paper/page/papers.ts'
import { type TableRow, tablePages } from '#lib/paper/table/table-layout.ts'

const ROUNDING = 1e-6

const inside = (one: Box, outer: Box): boolean =>
  one.x >= outer.x - ROUNDING &&
  one.y >= outer.y - ROUNDING &&
  one.x + one.width <= outer.x + outer.width + ROUNDING &&
  one.y + one.height <= outer.y + outer.height + ROUNDING

const overlap = (one: Box, other: Box): boolean =>
  one.x < other.x + other.width - ROUNDING &&
  other.x < one.x + one.width - ROUNDING &&
  one.y < other.y + other.height - ROUNDING &&
  other.y < one.y + one.height - ROUNDING

const COLUMNS = [
  { title: 'Food', share: 0.24 },
  { title: 'Contains', share: 0.46 },
  { title: 'Not known: ask', share: 0.3 },
]

const aText = fc.record({
  text: fc.string({ unit: 'grapheme-ascii', maxLength: 200 }),
  pt: fc.constantFrom(8, 9.5, 12),
  lines: fc.constantFrom(1, 3),
})
const aRow: fc.Arbitrary<TableRow> = fc.oneof(
  fc.record({
    kind: fc.constant('cells' as const),
    cells: fc.array(fc.array(aText, { maxLength: 3 }), { minLength: 3, maxLength: 3 }),
  }),
  fc.record({
    kind: fc.constant('over' as const),
    isHeading: fc.boolean(),
    texts: fc.array(aText, { maxLength: 4 }),
  }),
)

describe('a paper of rows', () => {
  it('[PA43] has nothing outside its page or on anything else, all rows in order, headings on each page', () => {
    fc.assert(
      fc.property(
        fc.array(aRow, { minLength: 1, maxLength: 40 }),
        fc.constantFrom(...PAPERS),
        (rows, paper) => {
          const pages = tablePages(paper, COLUMNS, rows)
          const { body } = frameOf(paper)
          expect(pages.flatMap((page) => page.rows)).toHaveLength(rows.length)
          for (const { headings, rows: placed } of pages) {
            expect(headings.flatMap(({ lines }) => lines).join(' ')).toContain('Contains')
            const texts = [...headings, ...placed.flatMap((row) => row.texts)]
            for (const one of texts) {
              expect(inside(one, body)).toBe(true)
              expect(one.pt).toBeGreaterThanOrEqual(LEAST_PT)
            }
            for (const [at, one] of texts.entries())
              for (const other of texts.slice(at + 1)) expect(overlap(one, other)).toBe(false)
          }
          const letters = (all: readonly string[]) => all.join('').replace(/\s/g, '').length
          const asked = rows.flatMap((row) =>
            (row.kind === 'over' ? row.texts : row.cells.flat()).map(({ text }) => text),
          )
          const drawn = pages.flatMap((page) =>
            page.rows.flatMap((row) => row.texts.flatMap(({ lines }) => lines)),
          )
          expect(letters(drawn)).toBe(letters(asked))
        },
      ),
      { numRuns: 60 },
    )
  })
})
