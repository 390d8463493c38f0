import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { answersLost, arrived } from '#lib/carry/arrived.ts'
import { canonicalJson, carriedFile, sealOf } from '#lib/carry/canonical.ts'
import { carriedJsonSchema } from '#lib/carry/carried-schema.ts'
import { type Carried, readCarried } from '#lib/carry/read-carried.ts'
import { declaredIn } from '#lib/needs/declared.ts'
import { declarable } from '#lib/station/codes/askable.ts'
import { CLAIMS, DIETS } from '#lib/station/codes/diets.ts'
import { newestStationSchema } from '#lib/station/schema.ts'
import { type Carriable, carriable, pictureOf } from '#tests/lib/carry/carriable-stations.ts'
import { demoStation } from '#tests/support/service.ts'

const read = (text: string): Carried => {
  const told = readCarried(text)
  if ('problem' in told) throw new Error(JSON.stringify(told.problem))
  return told.carried
}

const whyNot = (text: string): string | null => {
  const told = readCarried(text)
  return 'problem' in told ? told.problem.why : null
}

const fileOf = ({ document, pictures }: Carriable): string => carriedFile(document, pictures)

const demoFile = carriedFile(demoStation, [])

/** A file with something otherwise, and the hash that goes with it. */
const sealed = (over: Readonly<Record<string, unknown>>): string => {
  const file = { ...JSON.parse(demoFile), ...over }
  const { document, pictures } = file
  return canonicalJson({ ...file, sha256: sealOf({ document, pictures }) })
}

describe('a station in a file', () => {
  test('[CA2] is read as the document that was written, to the byte of its canonical form', () => {
    fc.assert(
      fc.property(carriable, (station) => {
        const file = fileOf(station)
        const { document, pictures } = read(file)
        expect(canonicalJson(document)).toBe(canonicalJson(station.document))
        expect(pictures.map((one) => one.sha256).sort()).toEqual(
          station.pictures.map((one) => one.sha256).sort(),
        )
        expect(carriedFile(document, station.pictures)).toBe(file)
      }),
      { numRuns: 30 },
    )
  })

  test('[CA2] has the same bytes in whatever order its keys and pictures stood', () => {
    const pictures = [pictureOf('one'), pictureOf('two')]
    const turned = Object.fromEntries(Object.entries(demoStation).reverse()) as typeof demoStation
    expect(carriedFile(turned, pictures.toReversed())).toBe(carriedFile(demoStation, pictures))
  })

  test('[CA2] of version 3 arrives as the newest', () => {
    const { notListed: _, readAgainDays: __, locale: ___, tax: ____, ...older } = demoStation
    const { document } = read(sealed({ document: { ...older, version: 3 } }))
    expect(document).toEqual(demoStation)
  })

  test.each([
    ['nothing', ' \n', 'empty'],
    ['a text', 'a wrap line', 'not-json'],
    ['a list of other things', '[1,2]', 'other-file'],
    ['a station document alone', JSON.stringify(demoStation), 'other-file'],
    ['a part of a file', demoFile.slice(0, 9_000), 'cut-off'],
    ['a newer format', canonicalJson({ ...JSON.parse(demoFile), version: 2 }), 'too-new'],
    ['a newer station', sealed({ document: { ...demoStation, version: 5 } }), 'too-new'],
    [
      'a price that somebody changed',
      demoFile.replace('"priceCents":650', '"priceCents":65'),
      'altered',
    ],
    ['a field that nobody knows', sealed({ more: 1 }), 'damaged'],
    ['a hash that is none', demoFile.replace(/"sha256":"[0-9a-f]+"/, '"sha256":"x"'), 'damaged'],
    [
      'a station without items',
      sealed({ document: { ...demoStation, items: [] } }),
      'wrong-station',
    ],
    [
      'a picture that is another',
      sealed({ pictures: [{ ...pictureOf('one'), base64: pictureOf('two').base64 }] }),
      'picture-altered',
    ],
  ])('[CA3] that is %s is refused', (_, text, why) => {
    expect(whyNot(text)).toBe(why)
  })

  test('[CA3] says how new it is, and what is wrong with its station', () => {
    expect(readCarried(sealed({ document: { ...demoStation, version: 9 } }))).toEqual({
      problem: { why: 'too-new', version: 9, known: 4 },
    })
    const [first, ...others] = demoStation.items
    const wrong = { ...demoStation, items: [{ ...first, heart: 'nothing' }, ...others] }
    expect(readCarried(sealed({ document: wrong }))).toEqual({
      problem: {
        why: 'wrong-station',
        messages: ['garden-chicken does not take its heart nothing'],
      },
    })
  })

  test('[CA3] cut off anywhere is never taken', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: demoFile.length - 1 }), (length) => {
        expect(whyNot(demoFile.slice(0, length))).not.toBeNull()
      }),
      { numRuns: 100 },
    )
  })

  test('[CA3] nested without end is refused, not followed', () => {
    const deep = `${'['.repeat(100_000)}${']'.repeat(100_000)}`
    expect(['not-json', 'altered']).toContain(whyNot(demoFile.replace('[]', deep)))
    expect(
      whyNot(demoFile.replace('"pictures":[]', '"__proto__":{"version":9},"pictures":[]')),
    ).toBe('damaged')
  })
})

describe('what arrives', () => {
  test('[CA4] is a station that its own checks take', () => {
    fc.assert(
      fc.property(carriable, ({ document }) => {
        const here = arrived(document, () => true)
        expect(newestStationSchema.safeParse(here).error?.issues).toBeUndefined()
        expect(answersLost(here)).toBe(0)
      }),
      { numRuns: 30 },
    )
  })

  test('[CA4] is nobody’s invention, so that what is read of it grows old', () => {
    expect([demoStation.invented, arrived(demoStation, () => true).invented]).toEqual([true, false])
  })

  test('[CA4] lets no guest have what it let them have elsewhere, and keeps what it contains', () => {
    fc.assert(
      fc.property(carriable, ({ document }) => {
        const here = arrived(document, () => true)
        const codes = [...declarable(document), ...DIETS, ...CLAIMS]
        for (const [index, there] of document.ingredients.entries()) {
          const one = here.ingredients[index]
          if (one === undefined) throw new Error('an ingredient is lost')
          expect(one.readOn).toBeNull()
          expect(one.readBy).toBeNull()
          for (const code of codes) {
            const before = declaredIn(document, there, code)
            const now = declaredIn(here, one, code)
            // Wheat under the statement is gluten without it, and stock of plants is stock.
            if (before === 'contains') expect(now, code).toBe('contains')
            else expect(['unknown', 'contains'], code).toContain(now)
          }
          for (const [code, said] of Object.entries(there.declarations))
            expect(one.declarations[code]).toBe(
              said === 'contains' || said === 'may-contain' ? said : 'unknown',
            )
        }
      }),
      { numRuns: 30 },
    )
  })

  test('[CA4] holds for substitutes as well, and for words that let a guest have something otherwise', () => {
    const [rice, ...others] = demoStation.ingredients
    if (rice === undefined) throw new Error('no ingredient')
    const label = {
      declarations: { milk: 'free', wheat: 'contains', gluten: 'free', egg: 'not-listed' },
      traits: ['stock', 'gluten-grain'],
      sources: { stock: ['plants'] },
      glutenStatement: true,
      claims: { halal: 'declared', kosher: 'not' },
      plain: true,
      readOn: '2026-11-20',
      readBy: 'KT',
    } as const
    const product = { id: 'other', ...structuredClone(label) }
    const there = newestStationSchema.parse({
      ...demoStation,
      ingredients: [{ ...rice, ...structuredClone(label), products: [product] }, ...others],
    })
    const unread = {
      declarations: { milk: 'unknown', wheat: 'contains', gluten: 'unknown', egg: 'unknown' },
      traits: ['stock', 'gluten-grain'],
      sources: { stock: [] },
      claims: { kosher: 'not' },
      readOn: null,
      readBy: null,
    }
    expect(arrived(there, () => true).ingredients[0]).toEqual({
      id: rice.id,
      name: rice.name,
      ...unread,
      products: [{ id: 'other', ...unread }],
    })
  })

  test('[CA4] names no picture that did not come along', () => {
    const [rice, ...others] = demoStation.ingredients
    if (rice === undefined) throw new Error('no ingredient')
    const photo = 'ab'.repeat(32)
    const there = { ...demoStation, ingredients: [{ ...rice, photo }, ...others] }
    expect(arrived(there, () => false).ingredients[0]?.photo).toBeUndefined()
    expect(arrived(there, () => true).ingredients[0]?.photo).toBe(photo)
  })
})

test('[CA5] the published schema is of the file, in a draft that names itself', () => {
  expect(carriedJsonSchema()).toMatchObject({
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    required: ['format', 'version', 'sha256', 'pictures', 'document'],
    additionalProperties: false,
    properties: {
      document: { properties: { version: { const: 4 }, format: { const: 'level-scoop/station' } } },
    },
  })
})
