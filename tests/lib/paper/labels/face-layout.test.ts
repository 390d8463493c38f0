import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Face, labelFaces, rollHeight } from '#lib/paper/labels/face-layout.ts'
import { LABEL_PAD, LABEL_STOCK, STOCK_IDS, type StockId } from '#lib/paper/labels/label-stock.ts'
import type { Fill, LabelTexts, Part } from '#lib/paper/labels/label-texts.ts'
import { markedFaces } from '#lib/paper/labels/printed-mark.ts'
import { type Box, LEAST_PT } from '#lib/paper/page/papers.ts'
import { labelPieces } from '#lib/paper/words/labels-en.ts'

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

const letters = (text: string): Map<string, number> => {
  const counts = new Map<string, number>()
  for (const sign of text.replace(/\s/g, '')) counts.set(sign, (counts.get(sign) ?? 0) + 1)
  return counts
}

const sayable = fc.constantFrom(
  ...[...'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789 -,&/é中'],
)
const aName = (max: number) =>
  fc.array(sayable, { minLength: 1, maxLength: max }).map((signs) => signs.join('').trim() || 'x')

const FILLS: readonly Fill[] = ['moment', 'hour', 'degrees', 'initials', 'words']

const aPart: fc.Arbitrary<Part> = fc.oneof(
  fc.record({
    kind: fc.constant('said' as const),
    lead: fc.constantFrom('CONTAINS', 'Touches on this line:', ''),
    again: fc.constantFrom('CONTAINS ALSO', ''),
    items: fc.array(aName(60), { minLength: 1, maxLength: 12 }),
    weight: fc.constantFrom('regular' as const, 'bold' as const),
    pt: fc.constantFrom(9, 10, 13),
  }),
  fc.record({
    kind: fc.constant('row' as const),
    cells: fc.array(
      fc.record({
        label: aName(30),
        value: fc.oneof(fc.constant(''), aName(24)),
        blank: fc.constantFrom(null, ...FILLS),
        isLoud: fc.boolean(),
      }),
      { minLength: 1, maxLength: 4 },
    ),
  }),
)

const moment = 'Wed, Nov 25, 12:45 PM'
const { cell, row, initials, part } = labelPieces

const aLabel: fc.Arbitrary<LabelTexts> = fc.record({
  id: fc.constant('pan/one'),
  name: aName(60),
  about: fc.constantFrom('', 'Back-up: lid on, own scoop'),
  drawn: fc.option(
    fc.record({
      wells: fc.array(fc.array(fc.boolean(), { minLength: 1, maxLength: 9 }), {
        minLength: 1,
        maxLength: 8,
      }),
      beside: fc.constantFrom(['pan 3 of 10', '#16 blue scoop, 2 level'], ['pan 40 of 72']),
    }),
  ),
  parts: fc.array(aPart, { maxLength: 7 }),
  foot: fc.constantFrom(
    [
      row(cell('Made', { value: moment }), initials),
      row(cell('Discard by', { value: moment, isLoud: true })),
    ],
    [
      row(cell('Opened', { blank: 'moment' }), initials),
      row(cell('Discard by', { blank: 'moment', isLoud: true })),
    ],
    [],
  ),
  footAgain: fc.constantFrom('', `Discard by ${moment}`),
  part: fc.constant(part),
})

const sizeOf = (id: StockId, all: readonly LabelTexts[]) => {
  const { width, height } = LABEL_STOCK[id]
  return { width, height: height ?? rollHeight(all, width) }
}

const checked = (face: Face, { width, height }: { width: number; height: number }): void => {
  const box = {
    x: LABEL_PAD,
    y: LABEL_PAD,
    width: width - 2 * LABEL_PAD,
    height: height - 2 * LABEL_PAD,
  }
  const all = [...face.texts, ...face.blanks, ...face.pans, ...face.bars]
  expect(all.filter((one) => !inside(one, box))).toEqual([])
  expect(face.texts.filter(({ pt }) => pt < LEAST_PT)).toEqual([])
  const over = all.flatMap((one, at) =>
    all.slice(at + 1).flatMap((other) => (overlap(one, other) ? [[one, other]] : [])),
  )
  expect(over).toEqual([])
}

const wordsOf = (texts: LabelTexts): string =>
  [
    texts.name,
    texts.about,
    ...(texts.drawn?.beside ?? []),
    ...[...texts.parts, ...texts.foot].flatMap((one) =>
      one.kind === 'row' ? one.cells.flatMap(({ label, value }) => [label, value]) : one.items,
    ),
  ].join('')

describe('a label of any words', () => {
  it('[PA30] has nothing outside its box, nothing on anything else, nothing under the least size, on any paper', () => {
    fc.assert(
      fc.property(aLabel, fc.constantFrom(...STOCK_IDS), (texts, id) => {
        const size = sizeOf(id, [texts])
        const faces = labelFaces(texts, size)
        for (const face of faces) checked(face, size)
        expect(faces.map(({ nth }) => nth)).toEqual(faces.map((_, at) => at + 1))
        expect(new Set(faces.map(({ of }) => of))).toEqual(new Set([faces.length]))
      }),
      { numRuns: 120 },
    )
  })

  it('[PA44] a roll’s label says when it was printed, unless it takes another label for that', () => {
    const mark = 'rev. 12, printed Sun, Nov 29, 2:05 PM'
    const bare = { id: 'a', about: '', drawn: null, parts: [], footAgain: '', part }
    const texts = { ...bare, name: 'Rice', foot: [row(cell('Made', { value: moment }))] }
    const roomy = markedFaces(texts, mark, { width: 62, height: 40 })
    expect(roomy.isMarked).toBe(true)
    expect(roomy.faces[0]?.texts.flatMap(({ lines }) => lines).join(' ')).toContain(mark)
    const size = { width: 62, height: 13 }
    expect(labelFaces(texts, size)).toHaveLength(1)
    expect(markedFaces(texts, mark, size)).toEqual({
      faces: labelFaces(texts, size),
      isMarked: false,
    })
  })

  it('[PA47] of several, the first has what is loud of it wherever that fits, before the drawing and what it is', () => {
    const said = (lead: string, items: readonly string[], pt: number): Part => ({
      ...{ kind: 'said', lead, again: lead, items, pt },
      weight: pt >= 12 ? 'bold' : 'regular',
    })
    const loud = said('CONTAINS', ['WHEAT', 'GLUTEN'], 13)
    const also = said('MAY CONTAIN', ['sesame'], 12)
    const touches = said('Touches on this line:', ['milk', 'egg', 'fish', 'tree nuts', 'soy'], 10)
    const texts: LabelTexts = {
      ...{ id: 'pan/pita', name: 'Pita', about: 'DEMO, invented', part },
      drawn: { wells: [[true, false], [false]], beside: ['pan 1 of 3', 'gloved hand, 1 piece'] },
      parts: [loud, also, touches],
      foot: [
        row(
          cell('Opened', { value: 'Fri, Dec 4,', blank: 'hour' }),
          cell('Initials', { blank: 'initials' }),
        ),
        row(cell('Discard by', { value: 'Fri, Dec 4, 12:20 PM', isLoud: true })),
      ],
      footAgain: 'Discard by Fri, Dec 4, 12:20 PM',
    }
    for (const id of STOCK_IDS) {
      const faces = labelFaces(texts, sizeOf(id, [texts]))
      const all = (one: (typeof faces)[number] | undefined) =>
        one?.texts.flatMap(({ lines }) => lines).join(' ') ?? ''
      for (const words of ['CONTAINS WHEAT, GLUTEN', 'MAY CONTAIN sesame'])
        expect(all(faces[0]), id).toContain(words)
      const whole = faces.map(all).join(' ')
      for (const words of ['DEMO, invented', 'pan 1 of 3', 'gloved hand, 1 piece'])
        expect(whole, id).toContain(words)
    }
  })

  it('[PA47] its name is read from afar: nothing else of it is larger while it is one label', () => {
    fc.assert(
      fc.property(aLabel, fc.constantFrom(...STOCK_IDS), (texts, id) => {
        const size = sizeOf(id, [texts])
        const [first, ...others] = labelFaces(texts, size)
        if (!first || others.length > 0) return
        const [name, ...rest] = first.texts
        for (const { pt } of rest) expect(name?.pt).toBeGreaterThanOrEqual(pt)
      }),
      { numRuns: 60 },
    )
  })

  it('[PA31] leaves no letter and no blank away, on however many labels', () => {
    fc.assert(
      fc.property(aLabel, fc.constantFrom(...STOCK_IDS), (texts, id) => {
        const faces = labelFaces(texts, sizeOf(id, [texts]))
        const drawn = letters(
          faces.flatMap((face) => face.texts.flatMap(({ lines }) => lines)).join(''),
        )
        for (const [sign, count] of letters(wordsOf(texts)))
          expect(drawn.get(sign) ?? 0, sign).toBeGreaterThanOrEqual(count)
        const asked = [...texts.parts, ...texts.foot].flatMap((one) =>
          one.kind === 'row' ? one.cells.flatMap(({ blank }) => blank ?? []) : [],
        )
        expect(faces.flatMap((face) => face.blanks.map(({ of }) => of)).sort()).toEqual(
          asked.toSorted(),
        )
      }),
      { numRuns: 80 },
    )
  })
})
