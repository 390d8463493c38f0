/** The demo's line with amounts on its cards and lines of invoices: all of it invented. */
import { stationSchema } from '#lib/station/schema.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { demoStation } from '#server/demo-station.ts'

type Lines = readonly (readonly [of: string, typed: string])[]

const AT_PANS: Readonly<Record<string, Lines>> = {
  rice: [['brown-rice', '1 qt']],
  chicken: [
    ['chicken-breast', '5 lb'],
    ['herb-rub', '1/4 cup'],
    ['canola-oil', '3 Tbsp'],
  ],
  beans: [
    ['black-beans', '1 #10 can'],
    ['cumin', 'to taste'],
  ],
  peppers: [
    ['bell-peppers', '4 lb'],
    ['canola-oil', '1/4 cup'],
  ],
  slaw: [
    ['cabbage', '2 lb 8 oz'],
    ['sesame-dressing', '1 cup'],
  ],
}

const CARDS: Readonly<Record<string, { readonly lines: Lines; readonly yields: string }>> = {
  'sesame-dressing': {
    lines: [
      ['soy-sauce', '1/2 cup'],
      ['sesame-oil', '1/3 cup'],
      ['rice-vinegar', '1/4 cup'],
    ],
    yields: '1 cup',
  },
  'tuna-mix': {
    lines: [
      ['tuna', '4 lb'],
      ['relish', '1 cup'],
      ['dressed-mayonnaise', '2 cups'],
    ],
    yields: '2 qt',
  },
  'dressed-mayonnaise': {
    lines: [
      ['mayonnaise', '1 qt'],
      ['lemon-juice', '1/4 cup'],
    ],
    yields: '1 qt 1/4 cup',
  },
}

const BOUGHT: Readonly<
  Record<string, readonly [packTyped: string, lies?: 'cooler' | 'dry-store']>
> = {
  'black-beans': ['6 x #10 cans', 'dry-store'],
  'bell-peppers': ['25 lb', 'cooler'],
  'canola-oil': ['1 gal', 'dry-store'],
  cabbage: ['50 lb', 'cooler'],
  cheddar: ['4 x 5 lb'],
  pita: ['10 x 12 pieces', 'dry-store'],
  'brown-rice': ['25 lb'],
  tuna: ['6 x 66.5 oz'],
  relish: ['a pail'],
}

const typed = (lines: Lines) => lines.map(([of, amount]) => ({ of, typed: amount }))

/** As the demo is, without amounts, invoices and places of its own. */
const BARE = {
  ...demoStation,
  ingredients: demoStation.ingredients.map(({ invoices: _, lies: __, edible: ___, ...one }) => one),
  recipes: demoStation.recipes.map(({ lines: _, yields: __, ...one }) => one),
  components: demoStation.components.map(({ lines: _, ...one }) => one),
}

export const CARDED: StationDocument = stationSchema.parse({
  ...BARE,
  ingredients: BARE.ingredients.map((one) => {
    const [packTyped, lies] = BOUGHT[one.id] ?? []
    return {
      ...one,
      ...(one.id === 'bell-peppers' ? { edible: 80 } : {}),
      ...(packTyped === undefined
        ? {}
        : { invoices: [{ date: '2026-11-20', packs: 1, packTyped, cents: 4_000 }] }),
      ...(lies === undefined ? {} : { lies }),
    }
  }),
  recipes: BARE.recipes.map((one) => {
    const card = CARDS[one.id]
    return card ? { ...one, lines: typed(card.lines), yields: card.yields } : one
  }),
  components: BARE.components.map((one) => {
    const lines = AT_PANS[one.id]
    return lines ? { ...one, lines: typed(lines) } : one
  }),
})
