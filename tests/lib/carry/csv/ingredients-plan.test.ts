import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { INGREDIENTS_NEED, ingredientsPlan } from '#lib/carry/csv/ingredients-plan.ts'
import { INGREDIENT_COLUMNS, ingredientsCsv } from '#lib/carry/csv/ingredients-table.ts'
import { MOST_TABLE_ROWS, readTable } from '#lib/carry/csv/table.ts'
import { applyStep, MOST_ROWS } from '#lib/editor/apply-step.ts'
import type { Draft } from '#lib/editor/draft.ts'
import { draftOf, type WrittenDocument } from '#lib/editor/draft-of.ts'
import { type Label, labelOf, UNREAD_LABEL } from '#lib/station/label.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { carriable } from '#tests/lib/carry/carriable-stations.ts'
import { demoStation } from '#tests/support/service.ts'

const written = (document: StationDocument): WrittenDocument => JSON.parse(JSON.stringify(document))

const draft = draftOf(written(demoStation))

type LabelIn = (ingredient: string) => Label | null

const labelsOf =
  ({ ingredients }: StationDocument): LabelIn =>
  (id) => {
    const found = ingredients.find((one) => one.id === id)
    return found === undefined ? null : labelOf(found)
  }

const labels = labelsOf(demoStation)

const planned = (text: string, of: Draft = draft, known = labels) => {
  const read = readTable(text, INGREDIENT_COLUMNS, INGREDIENTS_NEED)
  if ('problem' in read) throw new Error(JSON.stringify(read.problem))
  return ingredientsPlan(of, known, read.table)
}

const one = (text: string) => {
  const plan = planned(text)
  const [row] = plan.rows
  if (row === undefined) throw new Error('no row')
  return { ...plan, row }
}

/** Names are unique in a table that is read again. */
const named = (document: StationDocument): StationDocument => ({
  ...document,
  ingredients: document.ingredients.map((each, index) => ({
    ...each,
    name: `${each.name.slice(0, 50).trim()} ${index}`,
  })),
})

describe('a table of ingredients', () => {
  test('[CA9] that was written says the same when it is read: no row does anything', () => {
    fc.assert(
      fc.property(carriable, ({ document }) => {
        const station = named(document)
        const text = ingredientsCsv(draftOf(written(station)), labelsOf(station))
        const plan = planned(text, draftOf(written(station)), labelsOf(station))
        expect(plan.rows.filter(({ does }) => does !== 'same')).toEqual([])
        expect(plan.rows.map(({ row }) => row)).toEqual(
          station.ingredients.map((_, index) => index + 2),
        )
        expect([plan.steps, plan.labels]).toEqual([[], {}])
      }),
      { numRuns: 25 },
    )
  })

  test('[CA9] in a house that knows none of them begins each, unread, with what it contains', () => {
    fc.assert(
      fc.property(carriable, ({ document }) => {
        const station = named(document)
        const text = ingredientsCsv(draftOf(written(station)), labelsOf(station))
        const { house } = draftOf(written(station)).rows
        const empty: Draft = { station: 'own', rows: { ...(house ? { house } : {}) } }
        const plan = planned(text, empty, () => null)
        expect(plan.rows.every(({ does }) => does === 'new')).toBe(true)
        const there = station.ingredients.flatMap((each) => Object.values(each.declarations))
        const here = Object.values(plan.labels).flatMap((each) => Object.values(each.declarations))
        for (const word of ['contains', 'may-contain'] as const)
          expect(here.filter((said) => said === word).length).toBe(
            there.filter((said) => said === word).length,
          )
        expect(here.filter((said) => said === 'free' || said === 'not-listed')).toEqual([])
        for (const label of Object.values(plan.labels))
          expect([label.readOn, label.traits, label.claims]).toEqual([null, null, {}])
      }),
      { numRuns: 25 },
    )
  })

  test('[CA9] says of each row what it will do', () => {
    const {
      rows,
      steps,
      labels: own,
    } = planned(
      [
        'name,maker,pack,contains,may contain,declared free,not listed',
        'Tahini,Ford & Daughter,2 lb,sesame,tree nuts;peanut,milk,egg',
        'pita  BREAD,,12 count,wheat,,,',
        'Cumin ground,,,,,,',
        '"Cumin, ground",,,,,,',
      ].join('\n'),
    )
    expect(rows).toMatchObject([
      {
        row: 2,
        does: 'new',
        changes: [
          { field: 'name', from: '', to: 'Tahini' },
          { field: 'maker', from: '', to: 'Ford & Daughter' },
          { field: 'pack', from: '', to: '2 lb' },
          { field: 'contains', from: '', to: 'sesame' },
          { field: 'may contain', from: '', to: 'tree nuts; peanut' },
        ],
        notes: [{ code: 'arrives-unread', answers: 2 }],
      },
      {
        row: 3,
        does: 'changes',
        changes: [
          { field: 'name', from: 'Pita bread', to: 'pita  BREAD' },
          { field: 'pack', from: '', to: '12 count' },
        ],
        notes: [],
      },
      { row: 4, does: 'new' },
      { row: 5, does: 'same', changes: [] },
    ])
    expect(own).toEqual({
      tahini: {
        declarations: {
          sesame: 'contains',
          'tree-nuts': 'may-contain',
          peanut: 'may-contain',
          milk: 'unknown',
          egg: 'unknown',
        },
        traits: null,
        claims: {},
        readOn: null,
        readBy: null,
      },
    })
    const after = steps.reduce<Draft>((so, step) => {
      const stepped = applyStep(so, step)
      if (!stepped.ok) throw new Error(stepped.why)
      return stepped.draft
    }, draft)
    expect(after.rows['ingredient:tahini']).toMatchObject({ name: 'Tahini', pack: '2 lb' })
    expect(after.rows['ingredient:pita']).toMatchObject({ pack: '12 count' })
  })

  test('[CA9] changes no label that the house has, and says what it would have said', () => {
    const { row, labels: own } = one('name,contains,declared free\nPita bread,wheat;milk,soy')
    expect(row).toMatchObject({
      does: 'same',
      notes: [{ code: 'label-stays', allergens: ['milk'] }],
    })
    expect(own).toEqual({})
  })

  test('[CA9] gives a label that was read to no other maker or pack', () => {
    const [first] = demoStation.ingredients
    if (first === undefined) throw new Error('the demo has no ingredient')
    const made: Draft = {
      ...draft,
      rows: {
        ...draft.rows,
        [`ingredient:${first.id}`]: { name: first.name, maker: 'Nut Hollow' },
      },
    }
    const row = (cells: string, known = labels) =>
      planned(`id,name,maker\n${first.id},${cells}`, made, known).rows[0]
    const refused = { does: 'refused', why: { code: 'read-of-another' } }
    expect(row(`"${first.name}",Dairy Lane`)).toMatchObject(refused)
    expect(row(`"${first.name.toUpperCase()}",Nut Hollow`)).toMatchObject({ does: 'changes' })
    expect(row('Something else,Dairy Lane', () => UNREAD_LABEL)).toMatchObject({ does: 'changes' })
  })

  test('[CA9] takes no label of an ingredient that the house no longer has', () => {
    const gone: LabelIn = (id) =>
      id === 'tahini' ? { ...UNREAD_LABEL, readOn: '2026-11-20' } : labels(id)
    const { steps, labels: own } = planned('name,contains\nTahini,sesame', draft, gone)
    expect(steps).toMatchObject([{ id: 'tahini-2' }])
    expect(Object.keys(own)).toEqual(['tahini-2'])
  })

  test('[CA9] finds a row by its id before its name, so that a name can change', () => {
    const { row, steps } = one('name,id\nWhole wheat pita,pita')
    expect(row).toMatchObject({ does: 'changes', changes: [{ from: 'Pita bread' }] })
    expect(steps).toMatchObject([{ id: 'pita', fields: { name: 'Whole wheat pita' } }])
  })

  test.each([
    ['no name', 'name,maker\n,Ford', { code: 'nothing-said', column: 'name' }],
    [
      'an allergen that nobody knows',
      'name,contains\nTahini,sesame;kamut',
      { code: 'unknown-allergen', column: 'contains', value: 'kamut' },
    ],
    [
      'an allergen that it contains and is free of',
      'name,contains,declared free\nTahini,sesame,sesame',
      { code: 'contradicts', column: 'declared free', value: 'sesame' },
    ],
    ['a name that another has', 'name,id\nCumin ground,pita\n', null],
    [
      'the name of another',
      'name,id\n"Cumin, ground",pita\n',
      { code: 'name-taken', column: 'name', value: 'Cumin, ground' },
    ],
    ['a formula', 'name\n=HYPERLINK("x")', { code: 'formula', column: 'name' }],
  ])('[CA9] refuses a row with %s', (_, text, why) => {
    const { row, steps } = one(text)
    expect(row.why).toEqual(why)
    if (why !== null) expect([row.does, steps]).toEqual(['refused', []])
  })

  test('[CA9] tells the second row of a name, and a name that two here have', () => {
    expect(planned('name\nTahini\nTAHINI').rows[1]).toMatchObject({
      does: 'refused',
      why: { code: 'said-before', column: 'name', row: 2 },
    })
    const twice: Draft = {
      ...draft,
      rows: { ...draft.rows, 'ingredient:other': { name: 'Pita bread', at: 99 } },
    }
    expect(planned('name\nPita bread', twice).rows[0]?.why).toEqual({
      code: 'several-here',
      column: 'name',
      value: 'Pita bread',
    })
  })

  test('[CA9] of as many rows as a draft has room for ends in refusals, not in a fault', () => {
    const names = Array.from({ length: MOST_TABLE_ROWS }, (_, index) => `Food ${index}`)
    const full: Draft = {
      ...draft,
      rows: {
        ...draft.rows,
        ...Object.fromEntries(names.map((_, index) => [`well:w-${index}`, { at: index }])),
      },
    }
    const { rows, steps } = planned(`name\n${names.join('\n')}`, full)
    expect(rows.at(0)?.does).toBe('new')
    expect(rows.at(-1)).toMatchObject({ does: 'refused', why: { code: 'too-large' } })
    const after = steps.reduce<Draft>((so, step) => {
      const stepped = applyStep(so, step)
      if (!stepped.ok) throw new Error(stepped.why)
      return stepped.draft
    }, full)
    expect(Object.keys(after.rows)).toHaveLength(MOST_ROWS)
  })
})
