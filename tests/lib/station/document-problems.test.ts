import { describe, expect, it } from 'vitest'
import alderHall from '#fixtures/stations/alder-hall.json' with { type: 'json' }
import { MODEL_CODE } from '#lib/safety/limits.ts'
import type { DocumentProblem, DocumentProblemCode } from '#lib/station/document-problem.ts'
import { stationSchema } from '#lib/station/schema.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** What programs are told of the demo station once something of it is changed. */
const problemsOf = (edit: (to: StationDocument) => unknown): readonly unknown[] => {
  const document = stationSchema.parse(alderHall)
  edit(document)
  const read = stationSchema.safeParse(document)
  return read.success
    ? []
    : read.error.issues.map((one) => ('params' in one ? one.params : one.message))
}

const of = <One extends { readonly id: string }>(list: readonly One[], id: string): One => {
  const found = list.find((one) => one.id === id)
  if (!found) throw new Error(`nothing is called ${id}`)
  return found
}

const firstOf = <One>(list: readonly One[]): One => {
  const [first] = list
  if (first === undefined) throw new Error('there is none')
  return first
}

const item = (to: StationDocument) => firstOf(to.items)
const ingredient = (to: StationDocument, id = 'brown-rice') => of(to.ingredients, id)
const UNREAD = { declarations: {}, traits: null, claims: {}, readOn: null, readBy: null }
const bell = (periods: readonly (readonly [id: string, from: string, to: string])[]) => ({
  id: 'usual',
  name: 'Usual day',
  periods: periods.map(([id, from, to]) => ({ id, name: id, from, to })),
})
const there = (initials: string, period = 'a', of = 'usual') => ({
  bell: of,
  period,
  initials,
  certified: false,
})

type Told = Partial<Omit<DocumentProblem, 'message' | 'code'>>

/** A change that makes each problem, and where it is told. */
const EACH: Readonly<
  Record<DocumentProblemCode, readonly [edit: (to: StationDocument) => unknown, told: Told]>
> = {
  'twice-the-id': [
    (to) => to.tools.push(...to.tools.slice(0, 1)),
    { entity: 'tool', field: 'id', named: [] },
  ],
  'same-id': [
    (to) => {
      firstOf(to.backups).id = 'beans'
    },
    { entity: 'backup', id: 'beans', field: 'id' },
  ],
  'named-twice': [
    (to) => item(to).parts.push({ ...firstOf(item(to).parts), required: false }),
    { entity: 'item', field: 'parts' },
  ],
  'no-such-ingredient': [
    (to) => of(to.components, 'beans').ingredients.push('nothing'),
    { entity: 'component', id: 'beans', field: 'ingredients', named: ['nothing'] },
  ],
  'no-such-recipe': [
    (to) => of(to.components, 'beans').recipes.push('nothing'),
    { entity: 'component', id: 'beans', field: 'recipes', named: ['nothing'] },
  ],
  'no-such-component': [
    (to) => {
      firstOf(to.tools).usualFor = 'nothing'
    },
    { entity: 'tool', field: 'usualFor', named: ['nothing'] },
  ],
  'pans-dont-fit': [
    (to) =>
      firstOf(to.line.wells).pans.push({
        ...firstOf(firstOf(to.line.wells).pans),
        id: 'one-more',
        size: 'full',
      }),
    { entity: 'well', field: 'pans' },
  ],
  'no-pan': [
    (to) => {
      for (const well of to.line.wells)
        for (const pan of well.pans) if (pan.component === 'beans') pan.component = 'peppers'
    },
    { entity: 'item', named: ['beans'] },
  ],
  'no-heart': [
    (to) => {
      const { parts, heart } = item(to)
      Object.assign(parts.find((one) => one.component === heart) ?? {}, {
        usual: 'no',
        required: false,
      })
    },
    { entity: 'item', field: 'heart' },
  ],
  'base-not-a-choice': [
    (to) => {
      const { base } = of(to.items, to.items.find((one) => one.base !== null)?.id ?? '')
      if (base) base.usual = 'nothing'
    },
    { entity: 'item', field: 'base', named: ['nothing'] },
  ],
  'required-not-usual': [
    (to) => {
      const part = item(to).parts.find((one) => one.component !== item(to).heart)
      if (part) Object.assign(part, { required: true, usual: 'no' })
    },
    { entity: 'item', field: 'parts' },
  ],
  'no-cups': [
    (to) => {
      firstOf(item(to).parts).usual = 'side'
      of(to.components, firstOf(item(to).parts).component).side = false
    },
    { entity: 'item', field: 'parts' },
  ],
  'made-of-nothing': [
    (to) => {
      of(to.components, 'beans').ingredients = []
    },
    { entity: 'component', id: 'beans', field: 'ingredients' },
  ],
  'contains-itself': [
    (to) => of(to.recipes, 'sesame-dressing').recipes.push('sesame-dressing'),
    {
      entity: 'recipe',
      id: 'sesame-dressing',
      field: 'recipes',
      named: ['sesame-dressing', 'sesame-dressing'],
    },
  ],
  'line-of-another': [
    (to) => {
      of(to.components, 'beans').lines = [{ of: 'brown-rice', typed: '1 cup' }]
    },
    { entity: 'component', id: 'beans', field: 'lines', named: ['brown-rice'] },
  ],
  'no-source': [
    (to) => {
      of(to.components, 'beans').density = { gPerMl: 0.8, by: 'table' }
    },
    { entity: 'component', id: 'beans', field: 'density' },
  ],
  'no-such-allergen': [
    (to) => {
      ingredient(to).declarations.mlik = 'free'
    },
    { entity: 'ingredient', id: 'brown-rice', field: 'declarations', named: ['mlik'] },
  ],
  'kind-of-a-free-group': [
    (to) => {
      ingredient(to).declarations.almond = 'may-contain'
    },
    { entity: 'ingredient', field: 'declarations', named: ['tree-nuts', 'almond'] },
  ],
  'kind-of-a-group-not-listed': [
    (to) =>
      Object.assign(ingredient(to).declarations, { 'tree-nuts': 'not-listed', almond: 'contains' }),
    { entity: 'ingredient', field: 'declarations', named: ['tree-nuts', 'almond'] },
  ],
  'trait-missing': [
    (to) => {
      ingredient(to).declarations.milk = 'contains'
    },
    { entity: 'ingredient', field: 'traits', named: ['milk', 'dairy'] },
  ],
  'trait-denied': [
    (to) => {
      Object.assign(ingredient(to), { traits: ['dairy'] })
      ingredient(to).declarations.milk = 'not-listed'
    },
    { entity: 'ingredient', field: 'traits', named: ['milk', 'dairy'] },
  ],
  'source-of-nothing': [
    (to) => {
      ingredient(to).sources = { stock: ['beef'] }
    },
    { entity: 'ingredient', field: 'sources', named: ['stock'] },
  ],
  'no-such-source': [
    (to) => Object.assign(ingredient(to), { traits: ['lard'], sources: { lard: ['plants'] } }),
    { entity: 'ingredient', field: 'sources', named: ['lard', 'plants'] },
  ],
  'source-not-contained': [
    (to) => {
      Object.assign(ingredient(to), { traits: ['stock'], sources: { stock: ['fish'] } })
      ingredient(to).declarations.fish = 'not-listed'
    },
    { entity: 'ingredient', field: 'sources', named: ['stock', 'fish', 'fish'] },
  ],
  'statement-alone': [
    (to) => {
      ingredient(to).glutenStatement = true
    },
    { entity: 'ingredient', field: 'glutenStatement' },
  ],
  'own-twice': [
    (to) => to.ownAllergens.push('kiwi', 'kiwi'),
    { entity: 'house', id: null, field: 'ownAllergens', named: ['kiwi'] },
  ],
  'own-is-known': [
    (to) => to.ownAllergens.push('milk'),
    { entity: 'house', id: null, field: 'ownAllergens', named: ['milk'] },
  ],
  'dry-and-cooked': [
    (to) => {
      of(to.components, 'almonds').food.kind = 'plant'
    },
    { entity: 'component', id: 'almonds', field: 'food' },
  ],
  'cooked-to-order': [
    (to) => {
      of(to.components, 'beans').food.kind = 'eggs-to-order'
    },
    { entity: 'component', id: 'beans', field: 'food' },
  ],
  'reheats-in-hot-well': [
    (to) => to.safety.reheatOn.push('hot-well'),
    { entity: 'house', field: 'reheatOn' },
  ],
  'asks-too-early': [
    (to) => {
      to.safety.readings = { everyMin: 30, askBeforeMin: 30 }
    },
    { entity: 'house', field: 'readings' },
  ],
  'looser-than-model': [
    (to) => {
      to.safety.limits = { dateMark: { ...MODEL_CODE.dateMark, days: 20, certainty: 'memory' } }
    },
    { entity: 'house', field: 'limits', named: ['dateMark'] },
  ],
  'time-without-procedure': [
    (to) => {
      to.safety.timeProcedure = false
      of(to.line.wells, 'hot').held = 'time'
    },
    { entity: 'well', id: 'hot', field: 'held' },
  ],
  'held-otherwise': [
    (to) => {
      of(to.components, 'rice').held = 'cold'
    },
    { entity: 'component', id: 'rice', field: 'held', named: ['hot'] },
  ],
  'rush-backwards': [
    (to) => to.day.rushes.push({ from: '12:00', to: '12:00' }),
    { entity: 'house', field: 'rushes', named: ['12:00', '12:00'] },
  ],
  'doors-backwards': [
    (to) => {
      to.day.doors = { open: '13:00', close: '11:00' }
    },
    { entity: 'house', field: 'doors', named: ['13:00', '11:00'] },
  ],
  'period-backwards': [
    (to) => {
      to.day.bells = [bell([['a', '12:00', '11:00']])]
    },
    { entity: 'house', field: 'bells', named: ['usual', 'a'] },
  ],
  'periods-overlap': [
    (to) => {
      to.day.bells = [
        bell([
          ['b', '11:29', '12:00'],
          ['a', '11:00', '11:30'],
        ]),
      ]
    },
    { entity: 'house', field: 'bells', named: ['usual', 'a', 'b'] },
  ],
  'no-such-bell': [
    (to) => {
      to.day.crew = [there('MR')]
    },
    { entity: 'house', field: 'crew', named: ['usual'] },
  ],
  'no-such-period': [
    (to) => {
      to.day.bells = [bell([['a', '11:00', '11:30']])]
      to.day.crew = [there('MR', 'b')]
    },
    { entity: 'house', field: 'crew', named: ['usual', 'b'] },
  ],
  'initials-twice': [
    (to) => {
      to.day.bells = [bell([['a', '11:00', '11:30']])]
      to.day.crew = [there('MR'), there('mr')]
    },
    { entity: 'house', field: 'crew', named: ['usual', 'a', 'MR'] },
  ],
}

describe('what is wrong with a document', () => {
  it.each(Object.entries(EACH))(
    '[M44] %s is told by its code and its place',
    (code, [edit, told]) => {
      const problems = problemsOf(edit)
      expect(problems).toContainEqual(
        expect.objectContaining({ code, message: expect.any(String), ...told }),
      )
      // One slip is told once, and not as something else.
      expect(new Set(problems.map((one) => (one as DocumentProblem).code))).toEqual(new Set([code]))
    },
  )

  it('[M47] the labels of substitutes are checked too', () => {
    const product = { id: 'other', ...UNREAD }
    const told = (products: readonly object[]) =>
      problemsOf((to) => Object.assign(ingredient(to), { products }))
    expect(told([product, { ...product, id: 'third' }])).toEqual([])
    expect(told([product, product])).toMatchObject([
      { code: 'twice-the-id', id: 'brown-rice', field: 'products', named: ['other'] },
    ])
    expect(told([{ ...product, traits: ['dairy'], declarations: { milk: 'free' } }])).toMatchObject(
      [
        {
          code: 'trait-denied',
          id: 'brown-rice',
          field: 'products.traits',
          named: ['other', 'milk', 'dairy'],
          message: 'other of brown-rice is declared free of milk, but its traits name dairy',
        },
      ],
    )
  })

  it('[M47] a kind may be warned of where its group isn’t listed, and a mollusc where no crustacean is', () => {
    const told = (declarations: object, traits: readonly string[] = []) =>
      problemsOf((to) => Object.assign(ingredient(to), { declarations, traits }))
    expect(told({ 'tree-nuts': 'not-listed', almond: 'may-contain' })).toEqual([])
    expect(told({ shellfish: 'not-listed', molluscs: 'contains' }, ['shellfish'])).toEqual([])
  })

  it('[M45] one period may begin as another ends, and a person be there in both', () => {
    const told = problemsOf((to) => {
      to.day.doors = { open: '11:00', close: '13:00' }
      to.day.bells = [
        bell([
          ['b', '11:30', '12:00'],
          ['a', '11:00', '11:30'],
        ]),
      ]
      to.day.crew = [there('MR'), there('MR', 'b'), there('JO')]
    })
    expect(told).toEqual([])
  })

  it('[M45] two bells, or two periods of one, have names of their own', () => {
    const one = bell([['a', '11:00', '11:30']])
    const bells = (...of: (typeof one)[]) =>
      problemsOf((to) => {
        to.day.bells = of
      })
    const code = 'twice-the-id'
    expect(bells(one, one)).toMatchObject([{ code, entity: 'house', id: null, named: ['usual'] }])
    const both = bell([
      ['a', '11:00', '11:30'],
      ['a', '12:00', '12:30'],
    ])
    expect(bells(both)).toMatchObject([{ code, field: 'bells', named: ['usual', 'a'] }])
  })

  it('[M46] an amount is of what is in it, on as many lines as the card has, and a table is named', () => {
    const told = problemsOf((to) => {
      const beans = of(to.components, 'beans')
      const [own = ''] = beans.ingredients
      beans.lines = [
        { of: own, typed: '2 #10 cans' },
        { of: own, typed: 'to taste' },
      ]
      beans.density = { gPerMl: 0.8, by: 'table', source: 'A table of yields' }
    })
    expect(told).toEqual([])
  })

  it('[M48] a well is on time alone where a procedure is written', () => {
    const told = problemsOf((to) => {
      to.safety.timeProcedure = true
      of(to.line.wells, 'hot').held = 'time'
    })
    expect(told).toEqual([])
  })
})
