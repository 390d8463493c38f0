import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import alderHall from '#fixtures/stations/alder-hall.json' with { type: 'json' }
import { applyStep } from '#lib/editor/apply-step.ts'
import { type Draft, isRecord, recordsIn, rowOf, textIn } from '#lib/editor/draft.ts'
import { draftOf, type WrittenDocument } from '#lib/editor/draft-of.ts'
import { issueCode } from '#lib/editor/issue-code.ts'
import type { Problem } from '#lib/editor/problem.ts'
import { problemsOf } from '#lib/editor/problems-of.ts'
import type { Step } from '#lib/editor/step.ts'
import { sayProblem } from '#lib/editor/words/problems-en.ts'
import { newestStationSchema, stationSchema } from '#lib/station/schema.ts'
import { BREAKS, broken, placesOf } from '#tests/support/broken-documents.ts'
import { labelsOf } from '#tests/support/labels-of.ts'

const written: WrittenDocument = JSON.parse(JSON.stringify(stationSchema.parse(alderHall)))
const demo = draftOf(written)
const labels = labelsOf(written)

const stepped = (...steps: readonly Step[]): Draft =>
  steps.reduce((draft, step) => {
    const taken = applyStep(draft, step)
    if (!taken.ok) throw new Error(taken.why)
    return taken.draft
  }, demo)

const told = (...steps: readonly Step[]) => problemsOf(stepped(...steps), labels)

const put = (
  entity: Step['entity'],
  id: string,
  fields: Draft['rows'][`item:${string}`] & object,
  clear: readonly string[] = [],
): Step => ({
  do: 'put',
  entity,
  id,
  fields,
  clear,
})

const portionOf = (id: string) => {
  const portion = rowOf(demo, 'component', id)?.portion
  return isRecord(portion) ? portion : {}
}
const { gPerCup: _, ...withoutDensity } = portionOf('rice')
const itemParts = recordsIn(rowOf(demo, 'item', 'garden-chicken'), 'parts')

/** The issue's own list of bad input, as far as a draft can say it. */
const BAD: readonly (readonly [string, readonly Step[], Partial<Problem>])[] = [
  [
    'a price of −1',
    [put('item', 'garden-chicken', { priceCents: -1 })],
    { code: 'too-little', field: 'priceCents', least: 0 },
  ],
  [
    'a price of 10,000',
    [put('item', 'garden-chicken', { priceCents: 1_000_000 })],
    { code: 'too-much', field: 'priceCents', most: 100_000 },
  ],
  [
    'a name of 200 letters',
    [put('item', 'garden-chicken', { name: 'x'.repeat(200) })],
    { code: 'too-long', field: 'name', most: 60 },
  ],
  ['no name', [put('item', 'garden-chicken', { name: '  ' })], { code: 'empty', field: 'name' }],
  [
    'a price in words',
    [put('item', 'garden-chicken', { priceCents: 'six' })],
    { code: 'wrong-form', field: 'priceCents' },
  ],
  [
    'no price',
    [put('item', 'garden-chicken', {}, ['priceCents'])],
    { code: 'missing', field: 'priceCents' },
  ],
  [
    'an item without its heart',
    [
      put('item', 'garden-chicken', {
        parts: itemParts.filter((part) => textIn(part, 'component') !== 'chicken'),
      }),
    ],
    { code: 'no-heart', entity: 'item', id: 'garden-chicken', field: 'heart' },
  ],
  [
    'a scoop without a density',
    [put('component', 'rice', { portion: withoutDensity })],
    { code: 'no-density', entity: 'component', id: 'rice', field: 'portion.gPerCup' },
  ],
  [
    'a recipe that contains itself',
    [put('recipe', 'tuna-mix', { recipes: ['dressed-mayonnaise', 'tuna-mix'] })],
    { code: 'contains-itself', entity: 'recipe', id: 'tuna-mix', field: 'recipes' },
  ],
  [
    'a yield of zero',
    [put('recipe', 'tuna-mix', { yields: 'serves 0' })],
    { code: 'yield-zero', entity: 'recipe', id: 'tuna-mix', field: 'yields' },
  ],
  [
    'a pan too large, or two in one place',
    [{ do: 'move', entity: 'pan', id: 'pan-rice', before: 'pan-slaw', well: 'cold' }],
    { code: 'pans-dont-fit', entity: 'well', id: 'cold', field: 'pans' },
  ],
  [
    'a usual load that no pan holds',
    [put('pan', 'pan-rice', { usualPortions: 400 })],
    { code: 'usual-overfull', entity: 'pan', id: 'pan-rice', field: 'usualPortions' },
  ],
  [
    'a pan in a well that isn’t there',
    [put('pan', 'pan-rice', { well: 'attic' })],
    { code: 'no-well', entity: 'pan', id: 'pan-rice', field: 'well' },
  ],
  [
    'a time zone that is none',
    [put('house', 'house', { timeZone: 'Mars/Base' })],
    { code: 'no-such-time-zone', entity: 'house', id: 'house', field: 'timeZone' },
  ],
  [
    'a rush that ends before it begins',
    [put('day', 'day', { rushes: [{ from: '12:00', to: '11:00' }] })],
    { code: 'rush-backwards', entity: 'day', id: 'day', field: 'rushes' },
  ],
  [
    'readings asked for too early',
    [put('safety', 'safety', { readings: { everyMin: 10, askBeforeMin: 20 } })],
    { code: 'asks-too-early', entity: 'safety', id: 'safety', field: 'readings' },
  ],
]

describe('what is wrong with a draft', () => {
  test.each(BAD)('[ED5] with %s is told at its field', (_, steps, problem) => {
    const found = told(...steps)
    expect(found).toContainEqual(expect.objectContaining(problem))
    for (const one of found) expect(sayProblem(stepped(...steps), one)).not.toContain('isn’t right')
  })

  test('[ED5] is told while other parts aren’t there yet, and nothing of what stands in for them', () => {
    const problems = told(
      put('recipe', 'tuna-mix', { recipes: ['tuna-mix'] }),
      put('component', 'new-one', { name: 'Pickles' }),
      put('item', 'new-item', { name: 'New wrap' }),
      put('pan', 'new-pan', { well: 'finish', component: 'new-one', size: 'sixth' }),
    )
    const codes = problems.map(({ code, entity, id, field }) => `${code} ${entity} ${id} ${field}`)
    expect(codes).toContain('contains-itself recipe tuna-mix recipes')
    expect(codes).toContain('missing component new-one portion')
    expect(codes).toContain('missing component new-one held')
    expect(codes).toContain('missing item new-item priceCents')
    expect(JSON.stringify(problems)).not.toContain('stand-in')
  })

  test('[ED5] with a label that says free and contains is told at the ingredient', () => {
    const said = labels.tuna ?? {}
    const wrong = { ...said, declarations: { gluten: 'free', wheat: 'contains', nothing: 'free' } }
    const problems = problemsOf(demo, { ...labels, tuna: wrong })
    expect(problems).toContainEqual(
      expect.objectContaining({ code: 'no-such-allergen', entity: 'ingredient', id: 'tuna' }),
    )
  })

  test('[ED5] is what the schema refuses, by the same code, of 300 documents broken in one place', () => {
    const places = placesOf(written)
    let refused = 0
    fc.assert(
      fc.property(
        fc.nat({ max: places.length - 1 }),
        fc.nat({ max: BREAKS.length - 1 }),
        (place, how) => {
          const document = broken(written, places[place] ?? [], how)
          const parsed = newestStationSchema.safeParse(document)
          if (parsed.success) return
          const wanted = parsed.error.issues.map((issue) =>
            issue.code === 'custom' && issue.params?.code !== undefined
              ? String(issue.params.code)
              : issueCode(issue, document).code,
          )
          refused += 1
          const codes = problemsOf(draftOf(document), labelsOf(document)).map(({ code }) => code)
          expect(codes).toEqual(expect.arrayContaining(wanted))
        },
      ),
      { numRuns: 420 },
    )
    expect(refused).toBeGreaterThanOrEqual(300)
  }, 120_000)
})
