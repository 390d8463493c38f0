import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { lineStrip } from '#lib/paper/page/line-strip.ts'
import { type AskedSection, listPages } from '#lib/paper/page/list-layout.ts'
import { type AskedRow, plainRow } from '#lib/paper/page/list-row.ts'
import { frameOf, PAPERS } from '#lib/paper/page/papers.ts'
import { areApart, isInside } from '#tests/support/paper-boxes.ts'

const anyText = fc.string({ unit: 'grapheme-ascii', maxLength: 160 })
const anyCell = (most: number) =>
  fc.array(
    fc.record({
      text: anyText,
      pt: fc.constantFrom(8.5, 10, 12),
      lines: fc.integer({ min: 1, max: 3 }),
    }),
    { maxLength: most },
  )

const anyRow = fc.record({
  isTicked: fc.boolean(),
  cells: fc.oneof(fc.tuple(anyCell(3), anyCell(24), anyCell(4)), fc.tuple(anyCell(6))),
  drawing: fc.constantFrom(0, 6),
  beside: fc.constantFrom('', 'Pan 3', 'Pans 3 and 4', 'Pans 1, 2, 3, 4, 5, 6, 7, 8, 9 and 10'),
  blanks: fc.array(
    fc.record({
      of: fc.constantFrom('time', 'read'),
      before: fc.constantFrom('', 'initials', 'cooling from'),
      width: fc.integer({ min: 8, max: 30 }),
      behind: fc.constantFrom('', '°F'),
    }),
    { maxLength: 4 },
  ),
})

const anySections = fc
  .array(
    fc.record({
      title: fc.oneof(fc.constant(''), anyText),
      note: anyText,
      rows: fc.array(anyRow, { minLength: 1, maxLength: 7 }),
    }),
    {
      minLength: 1,
      maxLength: 4,
    },
  )
  .map((all): readonly AskedSection[] =>
    all.map(({ title, note, rows }, section) => ({
      ...{ title, note, again: `… ${title}` },
      rows: rows.map((row, at): AskedRow => ({ ...row, id: `${section}.${at}` })),
    })),
  )

const SHARES = [0.12, 0.55, 0.33]

describe('a list on its pages', () => {
  it('[PA10] nothing is outside its row or the page, and nothing on another, whatever is said', () => {
    fc.assert(
      fc.property(
        anySections,
        fc.constantFrom(...PAPERS),
        fc.constantFrom(0, 16),
        (sections, paper, lead) => {
          const { body } = frameOf(paper)
          const asked = { shares: SHARES, headings: ['When', 'What', 'Where'], sections, lead }
          for (const page of listPages(paper, asked)) {
            for (const { box, texts } of page.bands) {
              expect(isInside(box, body)).toBe(true)
              for (const text of texts) expect(isInside(text, box)).toBe(true)
              expect(areApart(texts)).toBe(true)
            }
            for (const { box, tick, texts, blanks, drawing } of page.rows) {
              expect(isInside(box, body)).toBe(true)
              const parts = [
                ...(tick ? [tick] : []),
                ...texts,
                ...blanks,
                ...(drawing ? [drawing] : []),
              ]
              for (const one of parts) expect(isInside(one, box)).toBe(true)
              expect(areApart(parts)).toBe(true)
            }
            const boxes = [...page.bands, ...page.rows].map(({ box }) => box)
            expect(areApart([...boxes, ...page.headings])).toBe(true)
          }
        },
      ),
      { numRuns: 80 },
    )
  })

  it('[PA10] every word of every cell is there once, in its order, and each row has one box to tick', () => {
    fc.assert(
      fc.property(anySections, (sections) => {
        const pages = listPages('letter', { shares: SHARES, headings: [], sections, lead: 0 })
        const rows = pages.flatMap((page) => page.rows)
        for (const asked of sections.flatMap((section) => section.rows)) {
          const own = rows.filter(({ id }) => id === asked.id)
          const letters = own
            .flatMap(({ texts }) => texts.flatMap(({ lines }) => lines))
            .join('')
            .replace(/\s/g, '')
          for (const cell of asked.cells)
            for (const { text } of cell) expect(letters).toContain(text.replace(/\s/g, ''))
          expect(own.filter(({ tick }) => tick !== null)).toHaveLength(asked.isTicked ? 1 : 0)
          expect(own.flatMap(({ blanks }) => blanks)).toHaveLength(asked.blanks.length)
        }
      }),
      { numRuns: 60 },
    )
  })

  it('[PA43] headings stand on each page, and rows without boxes to tick begin at its edge', () => {
    const text = { text: 'Sesame dressing and what else goes into it', pt: 12, lines: 1 }
    const rows = Array.from({ length: 80 }, (_, at) => plainRow(`${at}`, [text], [text], [text]))
    const wide = plainRow('wide', [text, text])
    const asked = (title: string) => ({ title, again: title, note: '', rows: [wide, ...rows] })
    for (const paper of PAPERS) {
      const pages = listPages(paper, {
        ...{ shares: SHARES, headings: ['Food', 'Contains', 'Ask'], lead: 0 },
        sections: [asked(''), asked('What it is made of')],
      })
      const { body } = frameOf(paper)
      expect(pages.length).toBeGreaterThan(3)
      for (const page of pages) {
        expect(page.headings.map(({ lines }) => lines.join(' '))).toEqual([
          'Food',
          'Contains',
          'Ask',
        ])
        for (const row of page.rows) expect(row.texts[0]?.x).toBe(body.x)
      }
      const [over] = pages.flatMap((page) => page.rows).filter(({ id }) => id === 'wide')
      expect(over?.texts[0]?.width).toBeCloseTo(body.width, 6)
      expect(pages[0]?.bands).toEqual([])
      expect(pages.at(-1)?.bands).toHaveLength(1)
    }
  })

  it('[PA11] a band never stands alone, and a section that goes on has it on each page', () => {
    const rows = Array.from(
      { length: 60 },
      (_, at): AskedRow => ({
        ...{ id: String(at), isTicked: true, drawing: 0, blanks: [] },
        cells: [[], [{ text: `row ${at}`, pt: 12 }], []],
      }),
    )
    const section = { title: 'Period 2', again: '… Period 2', note: '', rows }
    const pages = listPages('a4', {
      shares: SHARES,
      headings: [],
      sections: [section, section],
      lead: 0,
    })
    expect(pages.length).toBeGreaterThan(2)
    for (const [at, page] of pages.entries()) {
      expect(page.rows.length).toBeGreaterThan(0)
      const first = page.bands[0]?.texts[0]?.lines.join(' ')
      if (at > 0 && page.rows[0]?.id !== '0') expect(first).toBe('… Period 2')
      for (const { box } of page.bands)
        expect(page.rows.some((row) => Math.abs(row.box.y - box.y - box.height) < 1e-6)).toBe(true)
    }
  })

  it('[PA12] the line on paper has each pan once, by well, inside its box, at any length', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 8 }),
        fc.boolean(),
        (wells, isNamed) => {
          let number = 0
          const asked = wells.map((count) =>
            Array.from({ length: count }, () => {
              number += 1
              return { number, short: ['Wheat', 'berries'] }
            }),
          )
          const box = { x: 9, y: 30, width: 190, height: isNamed ? 13 : 6 }
          const { pans, bars } = lineStrip(asked, box, isNamed)
          expect(pans.map((pan) => pan.number)).toEqual(
            Array.from({ length: number }, (_, at) => at + 1),
          )
          for (const pan of pans) {
            expect(isInside(pan.box, box)).toBe(true)
            for (const text of pan.texts) expect(isInside(text, pan.box)).toBe(true)
          }
          expect(areApart([...bars, ...pans.map((pan) => pan.box)])).toBe(true)
          expect(bars).toHaveLength(wells.length)
        },
      ),
      { numRuns: 80 },
    )
  })
})
