import { describe, expect, it } from 'vitest'
import type { z } from 'zod'
import alderHall from '#fixtures/stations/alder-hall.json' with { type: 'json' }
import { type newestStationSchema, stationSchema } from '#lib/station/schema.ts'
import { backup } from '#tests/support/kitchens.ts'

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

describe('what a document says of its kitchen', () => {
  it('[M26] a recipe that contains itself is refused, by way of others too', () => {
    expect(
      saidOf((to) => {
        named(to.recipes, 'sesame-dressing').recipes.push('sesame-dressing')
      }),
    ).toEqual(["recipe sesame-dressing contains sesame-dressing: a recipe can't contain itself"])
    expect(
      saidOf((to) => {
        named(to.recipes, 'dressed-mayonnaise').recipes.push('tuna-mix')
      }),
    ).toEqual([
      "recipe tuna-mix contains dressed-mayonnaise contains tuna-mix: a recipe can't contain itself",
    ])
  })

  it.each<[string, (document: Written) => void, string]>([
    [
      'made of nothing',
      (to) => {
        named(to.components, 'beans').ingredients = []
      },
      'beans is made of nothing: name its ingredients or its recipe',
    ],
    [
      'of an unknown recipe',
      (to) => {
        named(to.components, 'beans').recipes = ['chili']
      },
      'beans has no known recipe chili',
    ],
    [
      'of an unknown ingredient',
      (to) => {
        named(to.recipes, 'tuna-mix').ingredients.push('capers')
      },
      'tuna-mix has no known ingredient capers',
    ],
    [
      'called twice',
      (to) => {
        at(to.recipes, 1).id = 'sesame-dressing'
      },
      'two recipes are called sesame-dressing',
    ],
    [
      'called as an ingredient',
      (to) => {
        at(to.recipes, 1).id = 'cumin'
      },
      'recipe cumin is called as an ingredient',
    ],
  ])('[M26] what is %s is refused', (_, edit, said) => {
    expect(saidOf(edit)).toContain(said)
  })

  it('[M27] an allergen that the station doesn’t know is refused, and its own additions are known', () => {
    const kiwi = (to: Written) => {
      named(to.ingredients, 'relish').declarations = { kiwi: 'contains' }
    }
    expect(saidOf(kiwi)).toEqual([
      "relish declares kiwi, which is no allergen of us-9: add it to the station's own allergens, or correct the spelling",
    ])
    expect(
      saidOf((to) => {
        kiwi(to)
        to.ownAllergens = ['kiwi']
      }),
    ).toEqual([])
  })

  it('[M28] a group that is declared free has no kind that isn’t', () => {
    expect(
      saidOf((to) => {
        named(to.ingredients, 'relish').declarations = { 'tree-nuts': 'free', pecan: 'may-contain' }
      }),
    ).toEqual(['relish is declared free of tree-nuts, but not of pecan, which is one'])
  })

  it.each<[string, (document: Written) => void, string]>([
    [
      'a contact of what there isn’t',
      (to) => to.contacts?.push({ id: 'knife', kind: 'board', components: ['kale', 'slaw'] }),
      'contact knife has no known component kale',
    ],
    [
      'a contact that names one twice',
      (to) => to.contacts?.push({ id: 'knife', kind: 'board', components: ['slaw', 'slaw'] }),
      'contact knife names slaw twice',
    ],
    [
      'two contacts of one name',
      (to) => to.contacts?.push({ id: 'griddle', kind: 'board', components: ['slaw', 'tuna'] }),
      'two contacts are called griddle',
    ],
    [
      'a back-up pan of what there isn’t',
      (to) => to.backups.push(backup('kale')),
      'a back-up pan holds no known component kale',
    ],
    [
      'two back-up pans of one name',
      (to) => to.backups.push(backup('rice', false)),
      'two back-up pans are called back-up-rice',
    ],
    [
      'a back-up pan that is called as a pan of the line',
      (to) => to.backups.push({ ...backup('rice'), id: 'pan-rice' }),
      'back-up pan pan-rice is called as a pan of the line, a component or an item',
    ],
    [
      'a tool of what there isn’t',
      (to) =>
        to.tools?.push({
          id: 'scoop-kale',
          name: '#8 of kale',
          tool: { tool: 'scoop', number: 8 },
          usualFor: 'kale',
        }),
      'tool scoop-kale is for no known component kale',
    ],
  ])('[M29] %s is refused', (_, edit, said) => {
    expect(saidOf(edit)).toEqual([said])
  })

  it('[M30] the station’s own allergens are none that can be asked already', () => {
    for (const code of ['milk', 'almond', 'gluten', 'vegan', 'halal'])
      expect(
        saidOf((to) => {
          to.ownAllergens = [code]
        }),
      ).toEqual([`${code} can be asked already: take it out of the station's own allergens`])
    expect(
      saidOf((to) => {
        to.ownAllergens = ['kiwi', 'kiwi']
      }),
    ).toEqual(['the station adds kiwi twice'])
  })
})
