/**
 * A document with something lawful in place of what isn't there yet, so that the rest of it is
 * checked while a person is still typing. It is only ever checked, never kept.
 */
import { type EntityKey, type Kind, namedBy } from '#lib/editor/draft.ts'
import type { Laid } from '#lib/editor/raw-document.ts'
import { UNREAD_LABEL } from '#lib/station/label.ts'
import { UNSAID_DAY, UNSAID_FOOD, UNSAID_SAFETY } from '#lib/station/shapes/older-documents.ts'

export const STAND_IN = 'stand-in'

const PAN = { id: STAND_IN, component: STAND_IN, size: 'ninth', depthIn: 4, usualPortions: 1 }

const PARTS: Readonly<Record<Kind | 'safety' | 'day' | 'house', object>> = {
  house: {
    name: STAND_IN,
    timeZone: 'UTC',
    currency: 'USD',
    allergenSet: 'us-9',
    ownAllergens: [],
    cautions: 'ask',
  },
  safety: UNSAID_SAFETY,
  day: UNSAID_DAY,
  well: { held: 'cold', pans: [PAN] },
  pan: PAN,
  backup: { component: STAND_IN, protected: false, size: 'third', depthIn: 4, kept: 'cold' },
  tool: { name: STAND_IN, tool: { tool: 'scoop', number: 16 }, usualFor: null },
  ingredient: { name: STAND_IN, ...UNREAD_LABEL },
  recipe: { name: STAND_IN, ingredients: [STAND_IN], recipes: [] },
  component: {
    name: STAND_IN,
    short: [STAND_IN],
    ingredients: [STAND_IN],
    recipes: [],
    held: 'cold',
    portion: { tool: 'piece', pieces: 1 },
    side: true,
    extraCents: 0,
    warm: null,
    food: UNSAID_FOOD,
  },
  item: {
    name: STAND_IN,
    priceCents: 0,
    heart: STAND_IN,
    base: null,
    parts: [{ component: STAND_IN, usual: 'in', required: true }],
  },
  contact: { kind: 'beside', components: [STAND_IN, `${STAND_IN}-2`] },
}

type Part = Readonly<Record<string, unknown>>

const isPart = (value: unknown): value is Part =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const list = (value: unknown): readonly Part[] => (Array.isArray(value) ? value.filter(isPart) : [])

/** Top-level fields of each row that can't be taken as they are. */
export type WrongFields = ReadonlyMap<EntityKey, ReadonlySet<string>>

export const completed = ({ document, places }: Laid, wrong: WrongFields): unknown => {
  const mended = (path: string, part: Part): Part => {
    const key = places.get(path)
    const fields = key === undefined ? undefined : wrong.get(key)
    if (key === undefined || fields === undefined) return part
    const standIn: Part = { ...PARTS[namedBy(key).entity] }
    const known = Object.entries(part).filter(([field]) => !fields.has(field))
    const given = Object.entries(standIn).filter(([field]) => fields.has(field))
    return Object.fromEntries([...known, ...given])
  }
  const all = (field: string, kind: Kind): readonly Part[] => [
    ...list(document[field]).map((part, index) => mended(`${field}.${index}`, part)),
    { id: STAND_IN, ...PARTS[kind], ...(kind === 'item' ? { id: `${STAND_IN}-item` } : {}) },
  ]
  const { wells } = isPart(document.line) ? document.line : { wells: [] }
  const { house } = { house: wrong.get('house') ?? new Set<string>() }
  return {
    ...Object.fromEntries(
      Object.entries({ ...PARTS.house, ...document }).map(([field, value]) => [
        field,
        house.has(field) && field in PARTS.house ? Reflect.get(PARTS.house, field) : value,
      ]),
    ),
    line: {
      wells: [
        ...list(wells).map((well, index) => {
          const path = `line.wells.${index}`
          const pans = list(well.pans).map((pan, place) => mended(`${path}.pans.${place}`, pan))
          const { pans: _, ...mendedWell } = mended(path, { ...well })
          return pans.length === 0
            ? { ...mendedWell, pans: [{ ...PAN, id: `${STAND_IN}-${index}` }] }
            : { ...mendedWell, pans }
        }),
        { id: STAND_IN, held: 'cold', pans: [{ ...PAN, id: `${STAND_IN}-pan` }] },
      ],
    },
    ingredients: all('ingredients', 'ingredient'),
    recipes: list(document.recipes).map((part, index) => mended(`recipes.${index}`, part)),
    components: all('components', 'component'),
    items: all('items', 'item'),
    contacts: document.contacts === null ? null : list(document.contacts),
    backups: list(document.backups).map((part, index) => mended(`backups.${index}`, part)),
    tools: list(document.tools).map((part, index) => mended(`tools.${index}`, part)),
    ...(isPart(document.safety) ? { safety: mended('safety', document.safety) } : {}),
    ...(isPart(document.day) ? { day: mended('day', document.day) } : {}),
  }
}
