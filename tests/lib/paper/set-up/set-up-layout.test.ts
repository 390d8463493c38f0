import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { PAN_SIZES } from '#lib/measure/pans.ts'
import { fitsOneWell } from '#lib/measure/well.ts'
import { wellFromAbove } from '#lib/measure/well-layout.ts'
import { type Box, frameOf, PAPERS, type Paper } from '#lib/paper/page/papers.ts'
import type { RowTexts } from '#lib/paper/set-up/row-layout.ts'
import { type SetUpPage, setUpPages, type WellTexts } from '#lib/paper/set-up/set-up-layout.ts'
import { setUpSheetEn as words } from '#lib/paper/words/set-up-sheet-en.ts'

const row = (number: number, name: string, notes: string): RowTexts => ({
  number,
  name,
  short: [name.slice(0, 12), name.slice(12, 24)].filter((one) => one !== ''),
  pan: 'quarter pan, 2 1/2 in deep',
  tool: ['3.25 fl oz spoodle', '4 level'],
  load: {
    loads: '40 loads of 500',
    times: '500 × 3 3/4 cups',
    total: '= 117 gal 3 qt',
    weight: '800 lb 15 3/4 oz',
    more: '120 in the larder',
    wrong: 'More than it holds: 4',
  },
  limit: '135 °F or above',
  isRead: number % 3 !== 0,
  notes: [notes, notes],
  outBy: number % 4 === 0 ? 'Out by' : null,
})

/** Of our own words; of a name that somebody types there is none. */
const LONGEST = words.well({ number: 12, held: 'time' })

const anyWells = fc
  .array(
    fc.array(fc.constantFrom(...PAN_SIZES), { minLength: 1, maxLength: 9 }).filter(fitsOneWell),
    { minLength: 1, maxLength: 5 },
  )
  .chain((wells) =>
    fc.record({
      wells: fc.constant(wells),
      name: fc.string({ unit: 'grapheme-ascii', minLength: 1, maxLength: 40 }),
      notes: fc.string({ unit: 'grapheme-ascii', maxLength: 300 }),
    }),
  )
  .map(({ wells, name, notes }): readonly WellTexts[] => {
    let number = 0
    return wells.map((sizes) => ({
      label: LONGEST,
      again: words.continued(LONGEST),
      pans: wellFromAbove(sizes.map((size, of) => ({ pan: `${of}`, size }))).stands.map((stand) => {
        number += 1
        return { stand, texts: row(number, name, notes) }
      }),
    }))
  })

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

const apart = (boxes: readonly Box[]): boolean =>
  boxes.every((one, at) => boxes.slice(at + 1).every((other) => !overlap(one, other)))

const checked = (paper: Paper, page: SetUpPage) => {
  const { body } = frameOf(paper)
  for (const { label, opening, pans, rows } of page.wells) {
    for (const box of [label, opening, ...rows.map((one) => one.box)])
      expect(inside(box, body)).toBe(true)
    for (const { box, texts } of pans) {
      expect(inside(box, opening)).toBe(true)
      for (const text of texts) expect(inside(text, box)).toBe(true)
    }
    for (const { box, tick, texts, blanks } of rows) {
      for (const one of [tick, ...texts, ...blanks]) expect(inside(one, box)).toBe(true)
      expect(apart([tick, ...texts, ...blanks])).toBe(true)
    }
  }
  const rows = page.wells.flatMap((well) => well.rows.map(({ box }) => box))
  const wells = page.wells.flatMap((well) => [well.label, well.opening])
  expect(apart([...rows, ...wells])).toBe(true)
}

describe('the set-up sheet on its pages', () => {
  it('[PA2] nothing is outside its box, and nothing on another, whatever is said', () => {
    fc.assert(
      fc.property(anyWells, fc.constantFrom(...PAPERS), (wells, paper) => {
        for (const page of setUpPages(paper, wells)) checked(paper, page)
      }),
      { numRuns: 60 },
    )
  })

  it('[PA2] each pan has one row, and a well is drawn with its rows on whatever page they are', () => {
    fc.assert(
      fc.property(anyWells, (wells) => {
        const pages = setUpPages('letter', wells)
        const rows = pages.flatMap(({ wells: on }) => on.flatMap((one) => one.rows))
        expect(rows.map(({ number }) => number)).toEqual(
          wells.flatMap(({ pans }) => pans.map(({ texts }) => texts.number)),
        )
        for (const { wells: on } of pages)
          for (const { pans, rows: own, leaders } of on) {
            expect(leaders).toHaveLength(own.length)
            for (const { number } of own)
              expect(pans.some((pan) => pan.number === number)).toBe(true)
          }
      }),
      { numRuns: 40 },
    )
  })

  it('[PA2] a well whose rows take three pages is drawn on each, its name above it', () => {
    const ninths = Array.from({ length: 9 }, (_, of) => ({ pan: `${of}`, size: 'ninth' as const }))
    const pans = wellFromAbove(ninths).stands.map((stand, at) => ({
      stand,
      texts: row(at + 1, 'Wheat berries with preserved lemon, dill', 'beside rice; '.repeat(60)),
    }))
    for (const paper of PAPERS) {
      const again = words.continued(LONGEST)
      const pages = setUpPages(paper, [{ label: LONGEST, again, pans }])
      expect(pages.length).toBeGreaterThan(2)
      for (const page of pages) checked(paper, page)
      expect(pages.map(({ wells }) => wells[0]?.label.lines)).toEqual(
        pages.map((_, at) => [at === 0 ? LONGEST : again]),
      )
    }
  })

  it('[PA6] the line is drawn 1 : 12, its left end above and its back at the right', () => {
    const pans = wellFromAbove([
      { pan: 'a', size: 'sixth' },
      { pan: 'b', size: 'sixth' },
      { pan: 'c', size: 'half' },
    ]).stands.map((stand, at) => ({ stand, texts: row(at + 1, 'Rice', '') }))
    const [page] = setUpPages('a4', [{ label: 'Well 1', again: '', pans }])
    const [well] = page?.wells ?? []
    const [back, front, half] = well?.pans ?? []
    expect(well?.opening.height).toBeCloseTo((20.75 * 25.4) / 12)
    expect(well?.opening.width).toBeCloseTo((12.75 * 25.4) / 12)
    expect(back?.box.height).toBeCloseTo((6.875 * 25.4) / 12)
    expect(back?.box.x).toBeGreaterThan(front?.box.x ?? Infinity)
    expect(back?.box.y).toBe(front?.box.y)
    expect(half?.box.y).toBeGreaterThan(back?.box.y ?? Infinity)
  })
})
