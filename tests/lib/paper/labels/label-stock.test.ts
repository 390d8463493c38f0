import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  LABEL_STOCK,
  labelBoxes,
  labelPages,
  MOST_OFFSET,
  NO_OFFSET,
  perSheet,
  STOCK_IDS,
} from '#lib/paper/labels/label-stock.ts'
import { PAPER_MM } from '#lib/paper/page/papers.ts'

const sheets = STOCK_IDS.flatMap((id) => {
  const stock = LABEL_STOCK[id]
  return stock.kind === 'sheet' ? [{ id, stock }] : []
})

describe('label sheets', () => {
  it.each(sheets)('[PA38] $id: every label is on its paper and on no other', ({ stock }) => {
    const { width, height } = PAPER_MM[stock.paper]
    const boxes = labelBoxes(stock)
    for (const [at, one] of boxes.entries()) {
      expect(one.x).toBeGreaterThan(3)
      expect(one.y).toBeGreaterThan(8)
      expect(one.x + one.width).toBeLessThan(width - 3)
      expect(one.y + one.height).toBeLessThan(height - 8)
      for (const other of boxes.slice(at + 1))
        expect(
          one.x + one.width <= other.x + 1e-9 ||
            other.x + other.width <= one.x + 1e-9 ||
            one.y + one.height <= other.y + 1e-9 ||
            other.y + other.height <= one.y + 1e-9,
        ).toBe(true)
    }
  })

  it('[PA38] their sizes are what their names say, in inches and millimetres', () => {
    const inches = (id: 'letter-10' | 'letter-6' | 'letter-30') => {
      const { width, height } = LABEL_STOCK[id]
      return [width / 25.4, height / 25.4].map((one) => Number(one.toFixed(3)))
    }
    expect(inches('letter-10')).toEqual([4, 2])
    expect(inches('letter-6')).toEqual([4, 3.333])
    expect(inches('letter-30')).toEqual([2.625, 1])
    expect(sheets.map(({ id, stock }) => [id, perSheet(stock)])).toEqual([
      ['cut-letter', 10],
      ['letter-10', 10],
      ['letter-6', 6],
      ['letter-30', 30],
      ['cut-a4', 10],
      ['a4-8', 8],
      ['a4-21', 21],
    ])
  })

  it('[PA39] a part-used sheet begins at the first label that is there; no label is lost or printed on another', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...sheets),
        fc.integer({ min: 1, max: 40 }),
        fc.integer({ min: 0, max: 90 }),
        ({ stock }, first, count) => {
          const labels = Array.from({ length: count }, (_, id) => ({ id }))
          const pages = labelPages(labels, stock, {
            first,
            offset: NO_OFFSET,
            height: stock.height,
          })
          expect(pages.flatMap((page) => page.labels.map(({ id }) => id))).toEqual(
            labels.map(({ id }) => id),
          )
          const boxes = labelBoxes(stock)
          const begins = Math.min(first, boxes.length) - 1
          if (count > 0) expect(pages[0]?.labels[0]?.at).toEqual(boxes[begins])
          for (const page of pages) {
            const places = page.labels.map(({ at }) => `${at.x} ${at.y}`)
            expect(new Set(places).size).toBe(places.length)
          }
        },
      ),
    )
  })

  it('[PA39] an offset moves every label by itself, and leaves a roll’s pages one each', () => {
    const offset = { x: 1.5, y: -MOST_OFFSET }
    for (const { stock } of sheets) {
      const moved = labelBoxes(stock, offset)
      for (const [at, { x, y }] of labelBoxes(stock).entries())
        expect([moved[at]?.x, moved[at]?.y]).toEqual([x + offset.x, y + offset.y])
    }
    const roll = LABEL_STOCK['roll-62']
    const pages = labelPages([{ id: 1 }, { id: 2 }], roll, { first: 9, offset, height: 40 })
    expect(pages.map(({ labels }) => labels.length)).toEqual([1, 1])
  })
})
