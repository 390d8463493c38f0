import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import alderHall from '#fixtures/stations/alder-hall.json' with { type: 'json' }
import type { Row } from '#lib/editor/draft.ts'
import { draftOf, type WrittenDocument } from '#lib/editor/draft-of.ts'
import {
  begunLimit,
  LIMIT_GROUPS,
  modelFigures,
  onBothScales,
  typedBesideModel,
} from '#lib/editor/limits/own-limit.ts'
import { problemsOf } from '#lib/editor/problems-of.ts'
import { menuLimitsEn } from '#lib/editor/words/limits-en.ts'
import { menuEn } from '#lib/editor/words/menu-en.ts'
import { type LimitName, MODEL_CODE } from '#lib/safety/limits.ts'
import { stationSchema } from '#lib/station/schema.ts'
import { labelsOf } from '#tests/support/labels-of.ts'
import { LOCAL_VARIANTS } from '#tests/support/local-variants.ts'

const NAMES = Object.keys(MODEL_CODE) as readonly LimitName[]

const written: WrittenDocument = JSON.parse(JSON.stringify(stationSchema.parse(alderHall)))

/** What is told of the demo with these limits. */
const toldOf = (limits: Row) => {
  const demo = draftOf(written)
  const draft = { ...demo, rows: { ...demo.rows, safety: { ...demo.rows.safety, limits } } }
  return problemsOf(draft, labelsOf(written)).map((one) => ({
    ...one,
    said: menuEn.problem(draft, one),
  }))
}

const SOURCE = { document: 'Health code of Alder County', paragraph: '§ 4.2' }

describe('a limit of local code', () => {
  test('[ED15] each limit has one place among the groups, and a name', () => {
    expect(Object.values(LIMIT_GROUPS).flat().toSorted()).toEqual(NAMES.toSorted())
    expect(new Set(Object.values(menuLimitsEn.names)).size).toBe(NAMES.length)
  })

  it.each(NAMES)('[ED15] %s begins as the model code’s, of no source until one is said', (name) => {
    const begun = begunLimit(name)
    expect(typedBesideModel(name, begun)).toBe('same')
    expect(toldOf({ [name]: begun }).map(({ field }) => field)).toEqual(
      ['document', 'paragraph', 'certainty'].map((one) => `limits.${name}.${one}`),
    )
    expect(toldOf({ [name]: { ...begun, ...SOURCE, certainty: 'memory' } })).toEqual([])
  })

  it.each([
    [140, 'F', 'hotHolding', { F: 1400, C: 600 }, 'stricter'],
    [60, 'C', 'hotHolding', { F: 1400, C: 600 }, 'stricter'],
    [135, 'F', 'hotHolding', { F: 1350, C: 570 }, 'same'],
    [57.1, 'C', 'hotHolding', { F: 1350, C: 571 }, 'stricter'],
    [130, 'F', 'hotHolding', { F: 1300, C: 545 }, 'looser'],
    [45, 'F', 'coldHolding', { F: 450, C: 72 }, 'looser'],
    [5, 'C', 'coldHolding', { F: 410, C: 50 }, 'same'],
    [4, 'C', 'coldHolding', { F: 392, C: 40 }, 'stricter'],
  ] as const)(
    '[ED15] %s °%s of %s is kept as %o and asks %s',
    (typed, scale, name, both, beside) => {
      const { bound, pairs } = modelFigures(name)
      const tenths = onBothScales(typed, scale, bound, pairs)
      expect(tenths).toEqual(both)
      expect(typedBesideModel(name, { ...begunLimit(name), tenths: { ...tenths } })).toBe(beside)
    },
  )

  test('[ED15] what asks more on the typed scale never asks less on the other', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...NAMES.filter((name) => modelFigures(name).pairs.length > 0)),
        fc.constantFrom('F' as const, 'C' as const),
        fc.integer({ min: -100, max: 3_000 }),
        (name, scale, tenths) => {
          const { bound, pairs } = modelFigures(name)
          const kept = onBothScales(tenths / 10, scale, bound, pairs)
          const other = scale === 'F' ? 'C' : 'F'
          expect(kept[scale]).toBe(tenths)
          for (const pair of pairs) {
            const asksAsMuch = (of: 'F' | 'C') =>
              bound === 'at-least' ? kept[of] >= pair[of] : kept[of] <= pair[of]
            if (asksAsMuch(scale)) expect(asksAsMuch(other)).toBe(true)
          }
        },
      ),
    )
  })

  it.each(Object.values(LOCAL_VARIANTS).flatMap((one) => Object.entries(one)))(
    '[ED15] the known %s of a local code asks more',
    (name, limit) => {
      expect(typedBesideModel(name as LimitName, JSON.parse(JSON.stringify(limit)))).toBe(
        'stricter',
      )
    },
  )

  test('[F3] what asks less is refused until it was read in the code itself, and told there', () => {
    const looser = { days: 10, ...SOURCE }
    expect(toldOf({ dateMark: { ...looser, certainty: 'memory' } })).toMatchObject([
      {
        code: 'looser-than-model',
        entity: 'safety',
        field: 'limits',
        named: ['dateMark'],
        said: 'That asks less than the model code: read it in the local code, and say where.',
      },
    ])
    expect(toldOf({ dateMark: { ...looser, certainty: 'seen' } })).toEqual([])
  })

  test('[ED5] a figure that can’t be read is told at its field, and nothing is said of it', () => {
    const typed = { ...begunLimit('coldHolding'), ...SOURCE, certainty: 'seen' }
    const wrong = { ...typed, tenths: { F: 'cold', C: 'cold' } }
    expect(typedBesideModel('coldHolding', wrong)).toBeNull()
    expect(toldOf({ coldHolding: wrong })).toMatchObject(
      ['F', 'C'].map((scale) => ({
        code: 'wrong-form',
        field: `limits.coldHolding.tenths.${scale}`,
        said: 'Temperature can’t be read so.',
      })),
    )
  })
})
