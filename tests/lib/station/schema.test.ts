import { describe, expect, it } from 'vitest'
import type { z } from 'zod'
import alderHall from '#fixtures/stations/alder-hall.json' with { type: 'json' }
import { type newestStationSchema, stationSchema } from '#lib/station/schema.ts'

type Written = z.input<typeof newestStationSchema>

/** What is said of the demo station's document after an edit. */
const saidOf = (edit: (document: Written) => void): readonly string[] => {
  const document = structuredClone(alderHall) as Written
  edit(document)
  const parsed = stationSchema.safeParse(document)
  return parsed.success ? [] : parsed.error.issues.map((issue) => issue.message)
}

const at = <Value>(list: readonly Value[], index: number): Value => {
  const found = list[index]
  if (found === undefined) throw new Error(`nothing at ${index}`)
  return found
}

const named = <Value extends { id: string }>(list: readonly Value[], id: string): Value => {
  const found = list.find((one) => one.id === id)
  if (!found) throw new Error(`nothing is called ${id}`)
  return found
}

describe('a station document', () => {
  it('is taken as the demo station writes it', () => {
    expect(saidOf(() => undefined)).toEqual([])
  })

  it.each<[string, (document: Written) => void, string]>([
    [
      'ingredient',
      (to) => to.ingredients.push(structuredClone(at(to.ingredients, 0))),
      'two ingredients are called brown-rice',
    ],
    [
      'component',
      (to) => to.components.push(structuredClone(named(to.components, 'rice'))),
      'two components are called rice',
    ],
    [
      'item',
      (to) => to.items.push(structuredClone(at(to.items, 0))),
      'two items are called garden-chicken',
    ],
    [
      'pan',
      (to) =>
        at(to.line.wells, 3).pans.push({
          id: 'pan-rice',
          component: 'almonds',
          size: 'sixth',
          depthIn: 4,
          usualPortions: 9,
        }),
      'two pans are called pan-rice',
    ],
    [
      'well',
      (to) => {
        at(to.line.wells, 3).id = 'cold'
      },
      'two wells are called cold',
    ],
  ])('[M1] a second %s of the same id is refused by its name', (_, edit, said) => {
    expect(saidOf(edit)).toContain(said)
  })

  it.each<[string, (document: Written) => void, string]>([
    [
      'ingredient',
      (to) => named(to.components, 'slaw').ingredients.push('kale'),
      'slaw has no known ingredient kale',
    ],
    [
      'component in a pan',
      (to) => {
        at(at(to.line.wells, 0).pans, 0).component = 'naan'
      },
      'pan pan-pita holds no known component',
    ],
    [
      'component in an item',
      (to) => at(to.items, 0).parts.push({ component: 'kale', usual: 'in', required: false }),
      'garden-chicken has no known component kale',
    ],
    [
      'component as a base',
      (to) => at(to.items, 0).base?.choices.push('naan'),
      'garden-chicken has no known component naan',
    ],
  ])('[M2] an unknown %s is refused', (_, edit, said) => {
    expect(saidOf(edit)).toContain(said)
  })

  it('[M3] an item takes only what has a pan on the line', () => {
    expect(
      saidOf((to) => {
        at(to.line.wells, 1).pans.pop()
      }),
    ).toContain('garden-chicken takes peppers, which has no pan')
  })

  it('[M4] an item takes a component once, as its base or as a part', () => {
    expect(
      saidOf((to) =>
        at(to.items, 0).parts.push({ component: 'rice', usual: 'in', required: false }),
      ),
    ).toContain('garden-chicken names rice twice')
    expect(
      saidOf((to) =>
        at(to.items, 0).parts.push({ component: 'slaw', usual: 'no', required: false }),
      ),
    ).toContain('garden-chicken names slaw twice')
  })

  it.each<[string, (document: Written) => void]>([
    [
      'missing',
      (to) => {
        at(to.items, 0).heart = 'beans'
      },
    ],
    [
      'usually left out',
      (to) => {
        const heart = at(at(to.items, 0).parts, 0)
        heart.usual = 'no'
        heart.required = false
      },
    ],
  ])('[M5] an item whose heart is %s is refused', (_, edit) => {
    expect(saidOf(edit).join()).toMatch(/garden-chicken does not take its heart/)
  })

  it('[M6] the usual base is one that can be chosen', () => {
    expect(
      saidOf((to) => {
        const { base } = at(to.items, 0)
        if (base) base.usual = 'chicken'
      }),
    ).toContain("garden-chicken has a usual base that can't be chosen")
  })

  it('[M7] only what has lidded cups is usually on the side', () => {
    expect(
      saidOf((to) => {
        named(to.components, 'yogurt-sauce').side = false
      }),
    ).toEqual(['bean-and-pepper puts yogurt-sauce on the side, but there are no cups for it'])
  })

  it("[M8] what can't be left out is usually in it", () => {
    expect(
      saidOf((to) => {
        at(at(to.items, 0).parts, 4).required = true
      }),
    ).toEqual(["garden-chicken can't leave out almonds, which it usually doesn't have"])
  })

  it('[M9] the pans of a well fit into it', () => {
    expect(
      saidOf((to) => {
        at(at(to.line.wells, 1).pans, 0).size = 'half'
      }),
    ).toEqual(["the pans of well hot don't fit into it"])
  })

  it.each<[string, (document: Written) => void, string]>([
    [
      'an item',
      (to) => {
        at(to.items, 0).id = 'slaw'
      },
      'item slaw is a component',
    ],
    [
      'a pan',
      (to) => {
        at(at(to.line.wells, 0).pans, 0).id = 'beans'
      },
      'pan beans is called as a component',
    ],
    [
      'a pan',
      (to) => {
        at(at(to.line.wells, 0).pans, 0).id = 'harbor-tuna'
      },
      'pan harbor-tuna is called as an item',
    ],
  ])(
    '[M10] %s is refused under the id of another kind, since names are looked up by id',
    (_, edit, said) => {
      expect(saidOf(edit)).toContain(said)
    },
  )

  it('[M11] an id is no name that every record inherits', () => {
    expect(
      saidOf((to) => {
        named(to.ingredients, 'relish').id = 'constructor'
      }).length,
    ).toBeGreaterThan(0)
  })

  it.each<[string, string[], string]>([
    ['milk', ['dairy'], 'cheddar'],
    ['egg', ['egg'], 'mayonnaise'],
    ['fish', ['fish'], 'tuna'],
  ])(
    '[M12] an ingredient that contains %s names where it comes from, and the other way round',
    (allergen, traits, id) => {
      expect(
        saidOf((to) => {
          named(to.ingredients, id).traits = []
        }),
      ).toEqual([`${id} contains ${allergen}, but its traits don't name ${traits[0]}`])
      expect(
        saidOf((to) => {
          named(to.ingredients, id).declarations = { [allergen]: 'free' }
        }),
      ).toEqual([`${id} is declared free of ${allergen}, but its traits name ${traits[0]}`])
    },
  )

  it('[M12] crustaceans are shellfish to a diet, and so are molluscs that are declared free of them', () => {
    expect(
      saidOf((to) => {
        named(to.ingredients, 'tuna').declarations = { fish: 'contains', shellfish: 'contains' }
      }),
    ).toEqual(["tuna contains shellfish, but its traits don't name shellfish"])
    expect(
      saidOf((to) => {
        named(to.ingredients, 'tuna').traits = ['fish', 'shellfish']
      }),
    ).toEqual([])
  })

  it('[M40] what a trait comes of is named of a trait that is ticked, and as it can be', () => {
    const tuna = (over: Partial<Written['ingredients'][number]>) =>
      saidOf((to) => Object.assign(named(to.ingredients, 'tuna'), over))
    expect(tuna({ sources: { stock: ['fish'] } })).toEqual([
      "tuna names what stock comes of, but its traits don't name stock",
    ])
    expect(tuna({ traits: ['fish', 'stock'], sources: { stock: ['fish', 'plants'] } })).toEqual([])
    expect(tuna({ traits: ['fish', 'lard'], sources: { lard: ['fish'] } })).toEqual([
      "tuna has lard of fish, which it can't come of",
    ])
    expect(
      saidOf((to) =>
        Object.assign(named(to.ingredients, 'relish'), {
          traits: ['gelatin', 'fish'],
          declarations: { fish: 'may-contain' },
          sources: { gelatin: ['fish'] },
        }),
      ),
    ).toEqual(["relish has gelatin of fish, but doesn't contain fish"])
    expect(tuna({ traits: ['fish', 'stock'], sources: { stock: ['whale'] as never } })).not.toEqual(
      [],
    )
  })

  it('[M41] the statement beside wheat stands with wheat and gluten declared free alone', () => {
    const pita = (declarations: Written['ingredients'][number]['declarations'], over = {}) =>
      saidOf((to) => Object.assign(named(to.ingredients, 'pita'), { declarations, ...over }))
    const stated = { glutenStatement: true }
    const refused = [
      'pita has the statement beside wheat, which goes with wheat that it contains, no barley or rye, and gluten declared free',
    ]
    expect(pita({ wheat: 'contains', gluten: 'free' }, stated)).toEqual([])
    expect(pita({ wheat: 'contains', gluten: 'contains' }, stated)).toEqual(refused)
    expect(pita({ wheat: 'free', gluten: 'free' }, stated)).toEqual(refused)
    expect(pita({ wheat: 'contains', rye: 'contains', gluten: 'free' }, stated)).toEqual(refused)
    // Of before the field: it is read as contained.
    expect(pita({ wheat: 'contains', gluten: 'free' })).toEqual([])
  })

  it('[M13] the time zone is one that is known', () => {
    expect(
      saidOf((to) => {
        to.timeZone = 'America/Atlantis'
      }),
    ).toEqual(['is no known time zone'])
    expect(
      saidOf((to) => {
        to.timeZone = 'Europe/Paris'
      }),
    ).toEqual([])
  })

  it.each([
    ['another format', { format: 'another/station' }],
    ['a newer version', { version: 5 }],
    ['a field nobody knows', { color: 'green' }],
    ['a number in words', { name: 12 }],
    ['no items', { items: [] }],
  ])('[M14] %s is refused whole', (_, wrong) => {
    expect(saidOf((to) => Object.assign(to, wrong)).length).toBeGreaterThan(0)
  })

  it('[M12] a kind that it contains names where it comes from, and so does a mollusc', () => {
    const says = (id: string, declarations: Record<string, 'contains'>) =>
      saidOf((to) => {
        named(to.ingredients, id).declarations = declarations
      })
    expect(says('relish', { salmon: 'contains' })).toEqual([
      "relish contains salmon, but its traits don't name fish",
    ])
    expect(says('relish', { molluscs: 'contains' })).toEqual([
      "relish contains molluscs, but its traits don't name shellfish",
    ])
  })

  it('[M43] of version 3 is read as the newest, and says nothing else than before', () => {
    const { notListed: _, readAgainDays: __, locale: ___, tax: ____, ...rest } = alderHall
    const read = stationSchema.parse({ ...rest, version: 3 })
    expect(read).toMatchObject({
      version: 4,
      notListed: 'fits',
      readAgainDays: 90,
      locale: 'en-US',
      tax: { inPrices: true, rateBasisPoints: null },
    })
    expect(read).toEqual(stationSchema.parse(alderHall))
    expect(read.ingredients.every((one) => one.law === undefined)).toBe(true)
  })

  it('[M43] holds what version 4 can say', () => {
    const said = saidOf((to) => {
      const ingredient = at(to.ingredients, 0)
      Object.assign(ingredient, {
        declarations: { ...ingredient.declarations, milk: 'not-listed' },
        law: 'us-9',
        plain: true,
        list: 'Rice.',
        photo: 'a1'.repeat(32),
        maker: 'Invented mill',
        pack: '20 lb bag',
        products: [
          {
            id: 'other-rice',
            pack: '5 kg bag',
            declarations: {},
            traits: null,
            claims: {},
            readOn: null,
            readBy: null,
          },
        ],
      })
      const component = at(to.components, 0)
      component.lines = [{ of: component.ingredients[0] ?? '', typed: '2 #10 cans' }]
      component.density = { gPerMl: 0.8, by: 'measured', typed: '10 scoops weigh 1 lb' }
      Object.assign(at(to.recipes, 0), { yields: '4 qt' })
      Object.assign(to.day ?? {}, {
        doors: { open: '11:00', close: '13:00' },
        bells: [
          {
            id: 'usual',
            name: 'Usual day',
            periods: [{ id: 'a', name: 'A lunch', from: '11:00', to: '11:30' }],
          },
        ],
        crew: [{ bell: 'usual', period: 'a', initials: 'MR', certified: false }],
        crewMeal: true,
      })
    })
    expect(said).toEqual([])
  })

  it('[M31] of version 1 is read as the newest, with contact and claims unknown', () => {
    const { ingredients, components, recipes, ...rest } = alderHall
    const old = {
      ...rest,
      version: 1,
      ingredients: ingredients.map(({ claims: _, readBy: __, ...one }) => one),
      components: components.map(({ recipes: _, ...one }) => ({
        ...one,
        ingredients: one.ingredients.length > 0 ? one.ingredients : ['relish'],
      })),
    }
    for (const key of ['allergenSet', 'ownAllergens', 'cautions', 'contacts', 'backups'])
      delete (old as Record<string, unknown>)[key]
    const read = stationSchema.parse(old)
    expect(read).toMatchObject({ version: 4, allergenSet: 'us-9', contacts: null, backups: [] })
    expect(read.ingredients.every((one) => Object.keys(one.claims).length === 0)).toBe(true)
    expect(stationSchema.parse(read)).toEqual(read)
    // What version 1 and 2 couldn't say holds as strictly as it can.
    for (const { food, remake } of read.components) {
      expect(food).toEqual({ kind: null, cookedIn: 'usual', roast: false, reheatable: false })
      expect(remake).toBeNull()
    }
    expect(read.safety).toMatchObject({ limits: {}, timeProcedure: false, reheatOn: ['range'] })
    expect(stationSchema.safeParse({ ...old, recipes }).success).toBe(true)
  })
})
