import { describe, expect, test } from 'vitest'
import { sheetCodes, sheetFacts, sheetOf } from '#lib/rooms/care/views/allergen-sheet.ts'
import { sheetWords } from '#lib/rooms/care/words/sheet-en.ts'
import { ingredient, kitchen, touching } from '#tests/support/kitchens.ts'
import { demoStation, given, OPENED_AT, running } from '#tests/support/service.ts'

type Plan = NonNullable<Parameters<typeof kitchen>[0]>

const sheet = (plan: Plan = {}) => {
  const { station, soiled, lent } = kitchen(plan)
  return sheetOf({ station, soiled, lent, revision: 1, asOf: OPENED_AT })
}

const cellIn = ({ codes, items, components }: ReturnType<typeof sheet>, id: string, code: string) =>
  [...items, ...components].find((one) => one.id === id)?.cells[codes.indexOf(code)]

const rowIn = (of: ReturnType<typeof sheet>, id: string) =>
  [...of.items, ...of.components].find((one) => one.id === id)

const demoSheet = () => sheetOf(sheetFacts(running(given())))

describe('what stands on the sheet', () => {
  test('[AS1] the set in its order, molluscs, gluten and the station’s own, each once', () => {
    expect(sheetCodes({ allergenSet: 'us-9', ownAllergens: ['kiwi'] })).toEqual([
      ...['milk', 'egg', 'fish', 'shellfish', 'tree-nuts', 'wheat', 'peanut', 'soy', 'sesame'],
      ...['molluscs', 'gluten', 'kiwi'],
    ])
    const eu = sheetCodes({ allergenSet: 'eu-14', ownAllergens: [] })
    expect(eu).toHaveLength(15)
    expect(new Set(eu).size).toBe(15)
  })

  test('[AS1] every item and every component, each with a cell for every allergen', () => {
    const { codes, items, components } = demoSheet()
    expect(items.map((one) => one.id)).toEqual(demoStation.items.map((one) => one.id))
    expect(components.map((one) => one.id)).toEqual(demoStation.components.map((one) => one.id))
    for (const row of [...items, ...components])
      expect(row.cells, row.id).toHaveLength(codes.length)
  })
})

describe('the statement beside wheat', () => {
  const free = { wheat: 'contains', gluten: 'free' } as const
  const of = (over: object, declarations: object = {}) => {
    const { station, soiled, lent } = kitchen()
    const stated = ingredient('leaf', { ...free, ...declarations }, { name: 'Flatbread', ...over })
    const ingredients = station.ingredients.map((one) => (one.id === 'leaf' ? stated : one))
    return sheetOf({
      ...{ station: { ...station, ingredients }, soiled, lent },
      ...{ revision: 1, asOf: OPENED_AT },
    })
  }

  test('[C62] is named with the day on which its label was read', () => {
    const stated = of({ glutenStatement: true })
    expect(cellIn(stated, 'leaf', 'gluten')?.word).toBe('free')
    expect(cellIn(stated, 'leaf', 'wheat')?.word).toBe('contains')
    expect(rowIn(stated, 'leaf')?.stated).toEqual([{ name: 'Flatbread', readOn: '2026-11-20' }])
    expect(rowIn(stated, 'cheese')?.stated).toEqual([])
    expect(sheetWords.stated('Flatbread', '2026-11-20')).toContain('read Nov 20, 2026')
  })

  test('[C62] is named of nothing that isn’t free by it', () => {
    for (const other of [
      of({}),
      of({ glutenStatement: true, readOn: null }),
      of({ glutenStatement: true }, { barley: 'contains' }),
      of({ glutenStatement: true }, { gluten: 'contains' }),
    ]) {
      expect(cellIn(other, 'leaf', 'gluten')?.word).not.toBe('free')
      expect(rowIn(other, 'leaf')?.stated).toEqual([])
    }
  })
})

describe('the word of a component', () => {
  test('[AS2] contains, may contain and declared free are as its labels say', () => {
    const of = sheet({ said: { cheese: { milk: 'contains' }, leaf: { milk: 'may-contain' } } })
    expect(cellIn(of, 'cheese', 'milk')?.word).toBe('contains')
    expect(cellIn(of, 'leaf', 'milk')?.word).toBe('may-contain')
    expect(cellIn(of, 'bowl', 'milk')?.word).toBe('free')
  })

  test('[AS2] declared free, but reached by what contains it or isn’t known, is shared', () => {
    const contacts = [touching('board', 'leaf', 'cheese'), touching('beside', 'heart', 'sauce')]
    const of = sheet({
      said: { cheese: { milk: 'contains' }, sauce: { milk: 'unknown' } },
      contacts,
    })
    expect(cellIn(of, 'leaf', 'milk')?.word).toBe('shared')
    expect(cellIn(of, 'heart', 'milk')?.word).toBe('shared')
    expect(cellIn(of, 'cheese', 'egg')?.word).toBe('free')
  })

  test('[AS3] where nobody read a label or said what touches what, nothing is declared free', () => {
    const { station } = kitchen()
    const ingredients = station.ingredients.map((one) =>
      one.id === 'leaf' ? ingredient('leaf', {}, { readOn: null }) : one,
    )
    const unread = sheet({ over: { ingredients } })
    expect(cellIn(unread, 'leaf', 'soy')?.word).toBe('unknown')
    expect(unread.unread).toEqual(['leaf'])
    const untold = sheet({ contacts: null, said: { cheese: { milk: 'contains' } } })
    expect(untold.contactKnown).toBe(false)
    for (const row of [...untold.items, ...untold.components])
      expect(row.cells.map((one) => one.word)).not.toContain('free')
    expect(cellIn(untold, 'cheese', 'milk')?.word).toBe('contains')
  })

  test('[AS5] the kinds that are contained or warned of are named', () => {
    const of = demoSheet()
    expect(cellIn(of, 'tuna', 'fish')).toMatchObject({ word: 'contains' })
    // Its label warns of cashews and pistachios too.
    expect(cellIn(of, 'almonds', 'tree-nuts')).toMatchObject({ word: 'contains', kinds: [] })
    expect(cellIn(of, 'bean-and-pepper', 'tree-nuts')?.kinds).toEqual([])
    const cheese = { 'tree-nuts': 'contains', almond: 'contains' } as const
    const alone = sheet({
      said: { cheese, sauce: { 'tree-nuts': 'may-contain', pecan: 'may-contain' } },
    })
    expect(cellIn(alone, 'cheese', 'tree-nuts')?.kinds).toEqual(['almond'])
    expect(cellIn(alone, 'sauce', 'tree-nuts')?.kinds).toEqual(['pecan'])
  })

  test('[AS8] a pan that another scoop went into says so, and may contain what that has', () => {
    const soiled = [{ component: 'leaf', by: 'cheese' }]
    const said = { cheese: { milk: 'contains' } } as const
    expect(cellIn(sheet({ said }), 'leaf', 'milk')?.word).toBe('free')
    const of = sheet({ said, soiled })
    expect(cellIn(of, 'leaf', 'milk')?.word).toBe('may-contain')
    expect(cellIn(of, 'leaf', 'egg')?.word).toBe('free')
    expect(cellIn(of, 'meal', 'milk')?.word).toBe('contains')
    expect(rowIn(of, 'leaf')?.soiledBy).toHaveLength(1)
    const told = given({ type: 'soilPan', pan: 'pan-beans', by: 'cheddar' })
    const after = sheetOf(sheetFacts(running(told)))
    expect(rowIn(after, 'beans')?.soiledBy).toEqual(['Cheddar'])
  })
})

describe('the word of an item', () => {
  test('[AS4] is the worst of all that can go in it, any base among them', () => {
    const of = sheet({ said: { bowl: { egg: 'contains' }, sauce: { milk: 'may-contain' } } })
    expect(cellIn(of, 'meal', 'egg')?.word).toBe('contains')
    expect(cellIn(of, 'meal', 'milk')?.word).toBe('may-contain')
    expect(cellIn(of, 'meal', 'soy')?.word).toBe('free')
  })

  test('[AS4] is marked only where leaving out or another base makes it less', () => {
    const of = sheet({
      said: {
        bowl: { egg: 'contains' },
        sauce: { milk: 'contains' },
        heart: { soy: 'contains' },
        wrap: { wheat: 'contains', soy: 'contains' },
      },
    })
    expect(cellIn(of, 'meal', 'egg')?.canChange).toBe(true)
    expect(cellIn(of, 'meal', 'milk')?.canChange).toBe(true)
    expect(cellIn(of, 'meal', 'wheat')?.canChange).toBe(true)
    expect(cellIn(of, 'meal', 'soy')?.canChange).toBe(false)
    expect(cellIn(of, 'meal', 'sesame')?.canChange).toBe(false)
  })

  test('[AS4] is not marked where what stays isn’t known', () => {
    const said = { sauce: { milk: 'contains' }, heart: { milk: 'unknown' } } as const
    expect(cellIn(sheet({ said }), 'meal', 'milk')).toMatchObject({
      word: 'contains',
      canChange: false,
    })
  })

  test('[AS4] what contains it in every base can’t be changed away', () => {
    const both = { wrap: { wheat: 'contains' }, bowl: { wheat: 'contains' } } as const
    expect(cellIn(sheet({ said: both }), 'meal', 'wheat')?.canChange).toBe(false)
  })
})

describe('dates', () => {
  test('[AS6] a row has the date of its oldest label, and none where one was never read', () => {
    const { station } = kitchen()
    const dated = (dates: Readonly<Record<string, string | null>>) =>
      sheet({
        over: {
          ingredients: station.ingredients.map((one) => ({
            ...one,
            readOn: dates[one.id] === undefined ? '2026-11-20' : (dates[one.id] ?? null),
          })),
        },
      })
    const of = dated({ leaf: '2026-10-02', cheese: '2026-11-24' })
    expect(rowIn(of, 'leaf')?.readOn).toBe('2026-10-02')
    expect(rowIn(of, 'meal')?.readOn).toBe('2026-10-02')
    const unread = dated({ cheese: null })
    expect(rowIn(unread, 'cheese')).toMatchObject({ readOn: null, unread: ['cheese'] })
    expect(rowIn(unread, 'meal')).toMatchObject({ readOn: null, unread: ['cheese'] })
  })

  test('[AS7] the sheet has the date of the newest label change, before one that of the opening', () => {
    expect(demoSheet().asOf).toBe(OPENED_AT)
    const told = given({ type: 'notSameProduct', ingredient: 'pita' })
    const facts = sheetFacts(running(told))
    expect(facts.asOf).toBe(running(told).at)
    expect(facts.asOf).toBeGreaterThan(OPENED_AT)
    expect(facts.revision).toBe(running(given()).revision)
    expect(sheetOf(facts).unread).toHaveLength(1)
  })
})

test('[AS10] invented data say so', () => {
  expect(demoSheet().invented).toBe(true)
  const facts = sheetFacts(running(given()))
  const station = { ...facts.station, invented: false }
  expect(sheetOf({ ...facts, station }).invented).toBe(false)
})

test('[N61] what no label lists stands apart from what is declared free, and touching counts', () => {
  const law = (plan: Plan) => {
    const { station, soiled, lent } = kitchen(plan)
    const ingredients = station.ingredients.map((one) => ({ ...one, law: 'us-9' as const }))
    return sheetOf({
      ...{ station: { ...station, ingredients }, soiled, lent },
      ...{ revision: 1, asOf: OPENED_AT },
    })
  }
  const leaf = { milk: 'not-listed' } as const
  const alone = law({ said: { leaf } })
  expect(cellIn(alone, 'leaf', 'milk')?.word).toBe('not-listed')
  expect(cellIn(alone, 'heart', 'milk')?.word).toBe('free')
  expect(cellIn(alone, 'meal', 'milk')).toMatchObject({ word: 'not-listed', canChange: true })
  const beside = law({
    said: { leaf, cheese: { milk: 'contains' } },
    contacts: [touching('beside', 'leaf', 'cheese')],
  })
  expect(cellIn(beside, 'leaf', 'milk')?.word).toBe('shared')
  const harmless = law({ said: { leaf }, contacts: [touching('beside', 'leaf', 'heart')] })
  expect(cellIn(harmless, 'heart', 'milk')?.word).toBe('free')
  expect(sheetWords.word['not-listed']).toBe('not listed')
})

test('[AS9] the words of the sheet promise nothing', () => {
  const said = JSON.stringify(sheetWords).toLowerCase()
  for (const promise of ['safe', 'allergen-free', 'free from', 'free of all'])
    expect(said).not.toContain(promise)
  expect(sheetWords.word.free).toBe('declared free')
  expect(new Set(Object.values(sheetWords.letter)).size).toBe(6)
})
