/** Stations with all that a file can carry: products, pictures, amounts as typed, names in any script. */
import fc from 'fast-check'
import { hashOfBytes } from '#lib/carry/canonical.ts'
import type { CarriedPicture } from '#lib/carry/carried-schema.ts'
import { type Label, labelOf } from '#lib/station/label.ts'
import { stationSchema } from '#lib/station/schema.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { generatedStation } from '#tests/lib/needs/oracle/generated-stations.ts'

export interface Carriable {
  readonly document: StationDocument
  readonly pictures: readonly CarriedPicture[]
}

export const pictureOf = (text: string): CarriedPicture => {
  const bytes = new TextEncoder().encode(text)
  return {
    sha256: hashOfBytes(bytes),
    type: 'image/webp',
    base64: btoa(String.fromCharCode(...bytes)),
  }
}

const NAMES = ['Šalát', '豆腐', '\u202eturned', 'a “quote”, \\ and \u2028', '=1+1', 'Ærtesuppe 🥣']

const name = fc.oneof(
  fc.constantFrom(...NAMES),
  fc.string({ unit: 'grapheme', minLength: 1, maxLength: 12 }).filter((one) => one.trim() !== ''),
)

const typed = fc.constantFrom('2 #10 cans', 'to taste', '1 lb 4 oz', '½ cup', '0.1 + 0.2 kg')

/** What is free of a group is free of its kinds. */
const WITHOUT_KINDS = ['milk', 'egg', 'peanut', 'soy', 'sesame', 'celery', 'mustard', 'lupin']

/** A label with *not listed* in place of some that are declared free. */
const notListed = (label: Label, from: number): Label => ({
  ...label,
  declarations: Object.fromEntries(
    Object.entries(label.declarations).map(([code, said], index) => [
      code,
      said === 'free' && WITHOUT_KINDS.includes(code) && (index + from) % 3 === 0
        ? 'not-listed'
        : said,
    ]),
  ),
})

export const carriable: fc.Arbitrary<Carriable> = fc
  .record({
    seed: fc.integer({ min: 1, max: 50_000 }),
    names: fc.array(name, { minLength: 30, maxLength: 30 }),
    typed: fc.array(typed, { minLength: 5, maxLength: 5 }),
    products: fc.integer({ min: 0, max: 3 }),
    pictures: fc.array(fc.string({ minLength: 1, maxLength: 20 }).map(pictureOf), { maxLength: 3 }),
    density: fc.double({ min: 0.02, max: 2.5, noNaN: true }),
  })
  .map(({ seed, names, typed, products, pictures, density }) => {
    const station = generatedStation(seed)
    const own = [...new Map(pictures.map((one) => [one.sha256, one])).values()]
    const photo = (index: number) => {
      const picture = own[index % (own.length + 1)]
      return picture === undefined ? {} : { photo: picture.sha256 }
    }
    const document = stationSchema.parse({
      ...station,
      ingredients: station.ingredients.map((one, index) => {
        const label = { ...labelOf(one), law: station.allergenSet, list: 'Water, salt.\nMore.' }
        const said = label.glutenStatement ? label : notListed(label, index)
        return {
          id: one.id,
          name: names[index] ?? one.name,
          maker: 'Maker & Co',
          ...said,
          ...photo(index),
          ...(index < products
            ? { products: [{ id: 'other', pack: '5 lb', ...label, ...photo(index + 1) }] }
            : {}),
        }
      }),
      components: station.components.map((one, index) => ({
        ...one,
        density: { gPerMl: density, by: 'measured', typed: 'ten scoops' },
        lines: one.ingredients.map((of) => ({ of, typed: typed[index % 5] })),
      })),
    })
    const named = new Set(
      document.ingredients.flatMap((one) => [one, ...(one.products ?? [])]).map((one) => one.photo),
    )
    return { document, pictures: own.filter((one) => named.has(one.sha256)) }
  })
