/**
 * A station that arrives in a house that has food of its own: which of its ingredients are the
 * house's, and what their labels say here and there. Pure: nothing is kept by it.
 */
import { nameKey } from '#lib/carry/names/by-name.ts'
import { freeId } from '#lib/carry/names/free-id.ts'
import { withoutApart } from '#lib/editor/begin.ts'
import { type Draft, keyOf, type Named, rowsOf, textIn } from '#lib/editor/draft.ts'
import { draftOf } from '#lib/editor/draft-of.ts'
import type { Label } from '#lib/station/label.ts'
import type { Declaration, Ingredient, StationDocument } from '#lib/station/station-document.ts'

/** The food of a house, and what it knows of it. */
export interface HouseFood {
  /** Rows of all ingredients of the house, whatever station lists them. */
  readonly draft: Draft
  /** Its newest label of the product in use; null where it has none. */
  readonly label: (ingredient: string) => Label | null
}

/** What the labels of one ingredient say otherwise. */
export interface LabelDiffers {
  readonly allergen: string
  /** null: nobody here has said. */
  readonly here: Declaration | null
  readonly there: Declaration
}

export interface MetIngredient {
  /** In this house from now on. */
  readonly id: string
  readonly name: string
  /**
   * `new`: it comes with its label, unread. `here`: it is the house's, whose label stays. `apart`: new
   * too, under an id of its own, since the house has another ingredient of that id.
   */
  readonly does: 'new' | 'here' | 'apart'
  /** What it would be called here, of one that is apart; null where nothing here has that id any more. */
  readonly other: string | null
  /** Of one that is the house's: what the file says that its label doesn't. */
  readonly differs: readonly LabelDiffers[]
}

export interface Met {
  /** With the house's ids, and the house's ingredients as they are called here. */
  readonly draft: Draft
  /** The same as a document, with the labels that arrive. */
  readonly document: StationDocument
  readonly ingredients: readonly MetIngredient[]
}

/** Two products, where both say who makes them and it isn't the same. */
const isOtherMaker = (one: string, other: string): boolean =>
  one !== '' && other !== '' && nameKey(one) !== nameKey(other)

const isSame = (there: Ingredient, { row }: Named): boolean =>
  nameKey(textIn(row, 'name')) === nameKey(there.name) &&
  !isOtherMaker(textIn(row, 'maker'), there.maker ?? '')

/** Only what a guest is kept from: what it doesn't contain there is nothing to go by here. */
const differing = (there: Ingredient, here: Label | null): readonly LabelDiffers[] =>
  Object.entries(there.declarations).flatMap(([allergen, said]) => {
    if (said !== 'contains' && said !== 'may-contain') return []
    const own = here?.declarations[allergen] ?? null
    return own === said || own === 'contains' ? [] : [{ allergen, here: own, there: said }]
  })

interface Matching {
  readonly met: readonly MetIngredient[]
  /** From the file's id to the house's. */
  readonly ids: ReadonlyMap<string, string>
}

const matched = (document: StationDocument, house: HouseFood): Matching => {
  const recipes = new Set(document.recipes.map(({ id }) => id))
  const here = rowsOf(house.draft, 'ingredient')
  const inFile = new Set(document.ingredients.map(({ id }) => id))
  const ids = new Map<string, string>()
  const given = new Set<string>()
  const usable = (one: Named): boolean => !given.has(one.id) && !recipes.has(one.id)
  const met = document.ingredients.map((there): MetIngredient => {
    const byId = here.find(({ id }) => id === there.id)
    const byName = here.filter((one) => isSame(there, one) && usable(one))
    const own = byName.find(({ id }) => id === there.id) ?? (byName.length === 1 ? byName[0] : null)
    const keep = (one: Pick<MetIngredient, 'id' | 'does' | 'other' | 'differs'>): MetIngredient => {
      ids.set(there.id, one.id)
      given.add(one.id)
      return { name: there.name, ...one }
    }
    if (own) {
      const differs = differing(there, house.label(own.id))
      return keep({ id: own.id, does: 'here', other: null, differs })
    }
    const isTaken = (id: string): boolean =>
      given.has(id) ||
      recipes.has(id) ||
      here.some((one) => one.id === id) ||
      house.label(id) !== null
    if (!isTaken(there.id)) return keep({ id: there.id, does: 'new', other: null, differs: [] })
    const id = freeId('ingredient', there.name, (one) => isTaken(one) || inFile.has(one))
    return keep({ id, does: 'apart', other: byId ? textIn(byId.row, 'name') : null, differs: [] })
  })
  return { met, ids }
}

/** Labels of what the house has already stay out: the house's own count, also where nobody read it. */
export const broughtBy = ({
  document,
  ingredients,
}: Pick<Met, 'document' | 'ingredients'>): StationDocument => {
  const own = new Set(ingredients.flatMap(({ id, does }) => (does === 'here' ? [id] : [])))
  return { ...document, ingredients: document.ingredients.filter(({ id }) => !own.has(id)) }
}

/** What a house says of where it stands: a file changes it of no station that is there. */
const OF_THE_PLACE = ['name', 'timeZone', 'locale', 'currency', 'invented'] as const

/** @param document as it arrives: no label of it is read */
export const metIn = (
  document: StationDocument,
  house: HouseFood,
  into: { readonly id: string; readonly name?: string; readonly keeps: Draft | null },
): Met => {
  const { met, ids } = matched(document, house)
  const idOf = (id: string): string => ids.get(id) ?? id
  const made = <
    Part extends StationDocument['recipes'][number] | StationDocument['components'][number],
  >(
    part: Part,
  ): Part => ({
    ...part,
    ingredients: part.ingredients.map(idOf),
    ...(part.lines === undefined
      ? {}
      : { lines: part.lines.map((line) => ({ ...line, of: idOf(line.of) })) }),
  })
  const own: StationDocument = {
    ...document,
    id: into.id,
    ...(into.name === undefined ? {} : { name: into.name }),
    ingredients: document.ingredients.map((one) => ({ ...one, id: idOf(one.id) })),
    recipes: document.recipes.map(made),
    components: document.components.map(made),
  }
  const draft = draftOf(JSON.parse(JSON.stringify(own)))
  const ofPlace = OF_THE_PLACE.flatMap((field) => {
    const kept = into.keeps?.rows.house?.[field]
    return kept === undefined ? [] : [[field, kept] as const]
  })
  const called = met.flatMap(({ id, does }) => {
    const key = keyOf('ingredient', id)
    return does === 'here'
      ? [[key, { ...house.draft.rows[key], at: draft.rows[key]?.at ?? 0 }] as const]
      : []
  })
  // What touches what was confirmed of another line: somebody here says it anew.
  const { contactsSaid: _, ...settings } = draft.rows.house ?? {}
  return {
    draft: {
      ...draft,
      rows: {
        ...withoutApart(draft).rows,
        ...Object.fromEntries(called),
        house: { ...settings, ...Object.fromEntries(ofPlace) },
      },
    },
    document: own,
    ingredients: met,
  }
}
