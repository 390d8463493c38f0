import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { recipesPlan } from '#lib/carry/csv/recipes-plan.ts'
import { RECIPE_COLUMNS, RECIPES_NEED, recipesCsv } from '#lib/carry/csv/recipes-table.ts'
import { readTable } from '#lib/carry/csv/table.ts'
import { applyStep } from '#lib/editor/apply-step.ts'
import type { Draft } from '#lib/editor/draft.ts'
import { draftOf } from '#lib/editor/draft-of.ts'
import { layDocument } from '#lib/editor/raw-document.ts'
import type { Step } from '#lib/editor/step.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { STATION_SETS } from '#server/stations/sets.ts'
import { carriable } from '#tests/lib/carry/carriable-stations.ts'
import { demoStation } from '#tests/support/service.ts'

const drafted = (document: StationDocument): Draft => draftOf(JSON.parse(JSON.stringify(document)))

const draft = drafted(demoStation)

const planned = (text: string, of: Draft = draft) => {
  const read = readTable(text, RECIPE_COLUMNS, RECIPES_NEED)
  if ('problem' in read) throw new Error(JSON.stringify(read.problem))
  return recipesPlan(of, read.table)
}

const taken = (of: Draft, steps: readonly Step[]): Draft =>
  steps.reduce((so, step) => {
    const stepped = applyStep(so, step)
    if (!stepped.ok) throw new Error(stepped.why)
    return stepped.draft
  }, of)

/** Names are unique in a table that is read again. */
const named = (document: StationDocument): StationDocument => ({
  ...document,
  ingredients: document.ingredients.map((each, index) => ({
    ...each,
    name: `${each.name.slice(0, 50).trim()} ${index}`,
  })),
})

/** What a card says, in whatever order its foods are listed. */
const cards = (of: Draft) =>
  layDocument(of, {}).document as unknown as Pick<StationDocument, 'recipes' | 'components'>

describe('a table of recipes', () => {
  test('[CA10] that was written says the same when it is read: no row does anything', () => {
    const stations = STATION_SETS.map(({ document }) => document)
    for (const document of [demoStation, ...stations]) {
      const plan = planned(recipesCsv(drafted(document)), drafted(document))
      expect(plan.rows.filter(({ does }) => does !== 'same')).toEqual([])
      expect(plan.steps).toEqual([])
    }
    fc.assert(
      fc.property(carriable, ({ document }) => {
        const own = drafted(named(document))
        const plan = planned(recipesCsv(own), own)
        expect(plan.rows.filter(({ does }) => does !== 'same')).toEqual([])
      }),
      { numRuns: 25 },
    )
  })

  test('[CA10] brings cards back onto a station that lost them', () => {
    const [bowls] = STATION_SETS
    if (bowls === undefined) throw new Error('no set')
    const full = drafted(bowls.document)
    const rows = Object.fromEntries(
      Object.entries(full.rows).flatMap(([key, row]) => {
        if (key.startsWith('recipe:') || row === undefined) return []
        const { lines: _, ...others } = row
        const bare = { ...others, ingredients: [], recipes: [] }
        return [[key, key.startsWith('component:') ? bare : row]]
      }),
    )
    const plan = planned(recipesCsv(full), { station: full.station, rows })
    expect(plan.rows.filter(({ does }) => does === 'refused')).toEqual([])
    const after = cards(taken({ station: full.station, rows }, plan.steps))
    const before = cards(full)
    const byName = (list: StationDocument['recipes']) =>
      list
        .map(({ name, lines, yields }) => ({
          name,
          yields,
          lines: (lines ?? []).map(({ typed }) => typed),
        }))
        .toSorted((one, other) => (one.name < other.name ? -1 : 1))
    expect(byName(after.recipes)).toEqual(byName(before.recipes))
    expect(after.components.map(({ ingredients }) => ingredients)).toEqual(
      before.components.map(({ ingredients }) => ingredients),
    )
  })

  test('[CA10] says of each row what it will do, and a recipe that it begins is known to later ones', () => {
    const { rows, steps } = planned(
      [
        'what;name;made with;amount;yields',
        'recipe;Herb oil;Canola oil;1 qt;1 qt',
        'recipe;Herb oil;Chives;2 bunches;',
        'component;Herb chicken;herb oil;1/2 cup;',
        'component;Herb chicken;Chicken breast;12 lb;',
        'component;Sesame slaw;Red cabbage;;',
      ].join('\n'),
    )
    expect(rows).toMatchObject([
      { row: 2, does: 'new', with: 'Canola oil' },
      { row: 3, does: 'new', with: 'Chives' },
      {
        row: 4,
        does: 'changes',
        changes: [{ field: 'made with', to: 'herb oil' }, { to: '1/2 cup' }],
      },
      { row: 5, does: 'changes', changes: [{ field: 'amount', from: '', to: '12 lb' }] },
      { row: 6, does: 'same' },
    ])
    const { recipes, components } = cards(taken(draft, steps))
    expect(recipes.find(({ id }) => id === 'herb-oil')).toEqual({
      id: 'herb-oil',
      name: 'Herb oil',
      ingredients: ['canola-oil', 'chives'],
      recipes: [],
      lines: [
        { of: 'canola-oil', typed: '1 qt' },
        { of: 'chives', typed: '2 bunches' },
      ],
      yields: '1 qt',
    })
    expect(components.find(({ id }) => id === 'chicken')).toMatchObject({
      recipes: ['herb-oil'],
      lines: [
        { of: 'herb-oil', typed: '1/2 cup' },
        { of: 'chicken-breast', typed: '12 lb' },
      ],
    })
  })

  test('[CA10] tells a second line of one food from its first', () => {
    const bare = drafted({
      ...demoStation,
      recipes: demoStation.recipes.map(({ lines: _, ...one }) => one),
    })
    const { rows, steps } = planned(
      'name,made with,amount\nDressed mayonnaise,Lemon juice,1 cup\nDressed mayonnaise,Lemon juice,to taste',
      bare,
    )
    expect(rows.map(({ does }) => does)).toEqual(['changes', 'changes'])
    const after = taken(bare, steps)
    expect(after.rows['recipe:dressed-mayonnaise']?.lines).toEqual([
      { of: 'lemon-juice', typed: '1 cup' },
      { of: 'lemon-juice', typed: 'to taste' },
    ])
    expect(planned(recipesCsv(after), after).steps).toEqual([])
  })

  test.each([
    ['no name', ',Chives,1 lb', { code: 'nothing-said', column: 'name' }],
    [
      'nothing that it is made with',
      'Herb oil,,1 lb',
      { code: 'nothing-said', column: 'made with' },
    ],
    [
      'a food that nobody here has',
      'Tuna mix,Dill,1 oz',
      { code: 'no-such-food', column: 'made with', value: 'Dill' },
    ],
    [
      'itself',
      'Tuna mix,Tuna mix,1 oz',
      { code: 'contains-itself', column: 'made with', value: 'Tuna mix' },
    ],
    [
      'what it goes into',
      'Dressed mayonnaise,Tuna mix,1 oz',
      { code: 'contains-itself', column: 'made with', value: 'Tuna mix' },
    ],
    [
      'a name that two have',
      'Cheddar,Cheddar,1 lb',
      { code: 'no-such-food', column: 'made with', value: 'Cheddar' },
    ],
  ])('[CA10] refuses a row with %s', (_, row, why) => {
    const plan = planned(`name,made with,amount\n${row}`)
    expect(plan.rows[0]).toMatchObject({ does: 'refused', why })
    expect(plan.steps).toEqual([])
  })

  test('[CA10] refuses a component that isn’t there, a yield of one, and a word for neither', () => {
    const { rows } = planned(
      [
        'what,name,made with,yields',
        'component,Falafel,Chives,',
        'component,Herb chicken,Chives,2 qt',
        'sauce,Herb oil,Chives,',
      ].join('\n'),
    )
    expect(rows.map(({ why }) => why)).toEqual([
      { code: 'no-such-component', column: 'name', value: 'Falafel' },
      { code: 'yields-of-component', column: 'yields' },
      { code: 'unknown-word', column: 'what', value: 'sauce' },
    ])
  })
})
