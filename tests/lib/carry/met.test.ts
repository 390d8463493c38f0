import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { arrived, arrivedLabel } from '#lib/carry/arrived.ts'
import { type HouseFood, metIn } from '#lib/carry/met.ts'
import type { Draft, Row } from '#lib/editor/draft.ts'
import { layDocument } from '#lib/editor/raw-document.ts'
import { type Label, UNREAD_LABEL } from '#lib/station/label.ts'
import { newestStationSchema } from '#lib/station/schema.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { carriable } from '#tests/lib/carry/carriable-stations.ts'
import { labelsOf } from '#tests/support/labels-of.ts'
import { demoStation } from '#tests/support/service.ts'

const json = (document: StationDocument) => JSON.parse(JSON.stringify(document))
const there = arrived(demoStation, () => false)

const house = (
  rows: Readonly<Record<string, Row>>,
  labels: Readonly<Record<string, Label>> = {},
): HouseFood => ({
  draft: {
    station: 'own',
    rows: Object.fromEntries(Object.entries(rows).map(([id, row]) => [`ingredient:${id}`, row])),
  },
  label: (id) => labels[id] ?? null,
})

const NEW = { id: 'alder-hall', keeps: null }

const metOf = (food: HouseFood, file: string, document = there) => {
  const met = metIn(document, food, NEW)
  const index = document.ingredients.findIndex(({ id }) => id === file)
  return { ...met, one: met.ingredients[index] }
}

/** What the draft and the labels that arrived say together. */
const laid = ({ draft, document }: { draft: Draft; document: StationDocument }) =>
  layDocument(draft, labelsOf(json(document))).document

describe('a station that arrives in a house', () => {
  test('[CA11] that knows nothing of it is the same station, label by label', () => {
    fc.assert(
      fc.property(carriable, ({ document }) => {
        const file = arrived(document, () => true)
        const met = metIn(file, house({}), { id: file.id, keeps: null })
        expect(laid(met)).toEqual({ ...json(file), contacts: null })
        expect(met.ingredients.every(({ does }) => does === 'new')).toBe(true)
      }),
      { numRuns: 30 },
    )
  })

  test('[ED18] brings no word of what declares its food free', () => {
    const label: Label = { ...UNREAD_LABEL, declarations: { milk: 'free' }, freeBy: 'letter' }
    expect(arrivedLabel(label)).toEqual({ ...UNREAD_LABEL, declarations: { milk: 'unknown' } })
  })

  test('[CA4] says of what touches what only what somebody here confirms', () => {
    const { draft, document } = metIn(there, house({}), NEW)
    expect(there.contacts).not.toEqual([])
    expect(laid({ draft, document }).contacts).toBeNull()
    const settings = { ...draft.rows.house, contactsSaid: true }
    const confirmed = { ...draft, rows: { ...draft.rows, house: settings } }
    expect(laid({ draft: confirmed, document }).contacts).toEqual(
      expect.arrayContaining(json(there).contacts),
    )
    expect(Object.values(draft.rows).some((row) => row?.touches === false)).toBe(false)
  })

  test('[CA11] takes the house’s ingredient of its name, with the house’s label', () => {
    const label: Label = { ...UNREAD_LABEL, declarations: { wheat: 'contains', sesame: 'free' } }
    const { one, draft } = metOf(
      house({ pita: { name: 'PITA  bread', maker: 'Ford & Daughter' } }, { pita: label }),
      'pita',
    )
    expect(one).toEqual({
      id: 'pita',
      name: 'Pita bread',
      does: 'here',
      other: null,
      differs: [
        { allergen: 'sesame', here: 'free', there: 'may-contain' },
        { allergen: 'gluten', here: null, there: 'contains' },
      ],
    })
    expect(draft.rows['ingredient:pita']).toEqual({
      name: 'PITA  bread',
      maker: 'Ford & Daughter',
      at: 1,
    })
  })

  test('[CA11] finds the house’s ingredient under another id, and its cards follow', () => {
    const { one, document } = metOf(house({ flatbread: { name: 'Pita bread' } }), 'pita')
    expect(one).toMatchObject({ id: 'flatbread', does: 'here' })
    expect(document.components.find(({ id }) => id === 'pita')?.ingredients).toEqual(['flatbread'])
    expect(newestStationSchema.safeParse(document).success).toBe(true)
  })

  test.each([
    ['called otherwise', { name: 'Pita, gluten free' }, {}],
    ['of another maker', { name: 'Pita bread', maker: 'Ford & Daughter' }, { maker: 'Mill Lane' }],
  ])('[CA11] gives an ingredient that is %s here an id of its own', (_, row, more) => {
    const file = {
      ...there,
      ingredients: there.ingredients.map((one) => (one.id === 'pita' ? { ...one, ...more } : one)),
    }
    const read: Label = { ...UNREAD_LABEL, declarations: { wheat: 'free' }, readOn: '2026-11-20' }
    const { one, document } = metOf(house({ pita: row }, { pita: read }), 'pita', file)
    expect(one).toMatchObject({ id: 'pita-bread', does: 'apart', other: row.name })
    expect(document.components.find(({ id }) => id === 'pita')?.ingredients).toEqual(['pita-bread'])
    expect(document.ingredients.find(({ id }) => id === 'pita-bread')?.declarations.wheat).toBe(
      'contains',
    )
  })

  test('[CA11] takes no label of an ingredient that the house no longer has', () => {
    const read: Label = { ...UNREAD_LABEL, declarations: { wheat: 'free' }, readOn: '2026-11-20' }
    expect(metOf(house({}, { pita: read }), 'pita').one).toMatchObject({
      id: 'pita-bread',
      does: 'apart',
      other: null,
    })
  })

  test('[CA11] keeps two of its ingredients two, and none becomes one of its recipes', () => {
    const [first, second, ...others] = there.ingredients
    if (first === undefined || second === undefined) throw new Error('no ingredients')
    const twins = [first, { ...second, name: first.name }, ...others]
    const file = { ...there, ingredients: twins }
    const { document, ingredients } = metIn(file, house({ rice: { name: first.name } }), NEW)
    expect(new Set(ingredients.map(({ id }) => id)).size).toBe(file.ingredients.length)
    expect(newestStationSchema.safeParse(document).error?.issues).toBeUndefined()
    const mix = metOf(house({ 'tuna-mix': { name: 'Pita bread' } }), 'pita')
    expect(mix.one).toMatchObject({ id: 'pita', does: 'new' })
  })

  test('[CA11] keeps what a station that is there says of its place', () => {
    const keeps: Draft = {
      station: 'own',
      rows: { house: { name: 'Our line', timeZone: 'Europe/Dublin', currency: 'EUR' } },
    }
    const { draft, document } = metIn(there, house({}), { id: 'own', keeps })
    expect(draft.station).toBe('own')
    expect(document.id).toBe('own')
    expect(draft.rows.house).toMatchObject({
      name: 'Our line',
      timeZone: 'Europe/Dublin',
      currency: 'EUR',
      locale: 'en-US',
      allergenSet: 'us-9',
    })
  })
})
