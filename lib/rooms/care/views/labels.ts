/** Labels: which ingredients there are, how one is read anew, and what came of a change. */

import { waysTo } from '#lib/needs/declared.ts'
import { componentsWith } from '#lib/needs/made-with.ts'
import { openByLabel, type StillOpen } from '#lib/rooms/care/facts/label-open.ts'
import { isBefore, pansBefore } from '#lib/rooms/care/facts/product-before.ts'
import type { LabelChange, RunningState } from '#lib/service/state.ts'
import { pansOf } from '#lib/station/find.ts'
import { ingredientIn } from '#lib/station/ingredient-name.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

export interface LabelEntry {
  readonly id: string
  readonly name: string
  /** Recipes through which it comes into the component, by name. */
  readonly through: readonly string[]
  readonly readOn: string | null
}

export interface LabelGroup {
  readonly component: string
  readonly name: string
  readonly ingredients: readonly LabelEntry[]
}

const inLineOrder = (station: StationDocument) => {
  const places = pansOf(station).map((pan) => pan.component)
  const placeOf = (id: string) => {
    const place = places.indexOf(id)
    return place < 0 ? places.length : place
  }
  return [...station.components].sort((one, other) => placeOf(one.id) - placeOf(other.id))
}

/** Every component in the line's order with its ingredients; one in two recipes stands once. */
export const labelGroups = (station: StationDocument): readonly LabelGroup[] => {
  const known = new Map(station.ingredients.map((one) => [one.id, one]))
  const name = ingredientIn(station)
  return inLineOrder(station).map((component) => {
    const found = new Map<string, LabelEntry>()
    for (const way of waysTo(station, component)) {
      const ingredient = known.get(way.at(-1) ?? '')
      if (!ingredient || isBefore(ingredient.id) || found.has(ingredient.id)) continue
      const through = way.slice(0, -1).map(name)
      const { id, readOn } = ingredient
      found.set(id, { id, name: ingredient.name, through, readOn })
    }
    return { component: component.id, name: component.name, ingredients: [...found.values()] }
  })
}

const plain = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{Mn}/gu, '')
    .toLowerCase()

/** Whether every typed word begins a word of the name. */
const begins = (name: string, typed: string): boolean => {
  const words = plain(name).split(/[^\p{L}\p{N}]+/u)
  return plain(typed)
    .split(/\s+/)
    .filter((one) => one !== '')
    .every((one) => words.some((word) => word.startsWith(one)))
}

/** Groups in which something was found, by the first letters of an ingredient or its component. */
export const findLabels = (groups: readonly LabelGroup[], typed: string): readonly LabelGroup[] =>
  groups
    .map((group) => ({
      ...group,
      ingredients: begins(group.name, typed)
        ? group.ingredients
        : group.ingredients.filter((one) => begins(one.name, typed)),
    }))
    .filter((group) => group.ingredients.length > 0)

/** Components that an ingredient goes into, in the line's order: their labels are to be printed anew. */
export const goesInto = (station: StationDocument, ingredient: string): readonly string[] => {
  const made = componentsWith(station, ingredient)
  return inLineOrder(station).flatMap(({ id }) => (made.includes(id) ? [id] : []))
}

/** What a label that was read is of: another product than what is in the pans, or the same. */
export const PRODUCTS = ['other', 'same'] as const
export type Product = (typeof PRODUCTS)[number]

/** Whether its product was said not to be the same, and its label isn't read since. */
export const isNotSame = ({ labelChanges }: RunningState, ingredient: string): boolean =>
  labelChanges.filter((one) => one.ingredient === ingredient).at(-1)?.read === false

export interface LabelOutcome extends LabelChange, StillOpen {
  readonly name: string
  /** The newest change of its ingredient: it tells all that is open of that; earlier ones nothing. */
  readonly isNewest: boolean
  /** Names of the components of which a pan still holds the product before. */
  readonly before: readonly string[]
  /** Names of the components whose labels are to be printed anew. */
  readonly reprint: readonly string[]
}

/** What came of every label that changed in this service, the newest first. */
export const labelOutcomes = (state: RunningState): readonly LabelOutcome[] => {
  const { station, labelChanges } = state
  const name = ingredientIn(station)
  const groups = new Map(labelGroups(station).map((one) => [one.component, one.name]))
  const open = openByLabel(state)
  return labelChanges
    .map((change, place): LabelOutcome => {
      const { ingredient } = change
      const later = labelChanges.slice(place + 1)
      const isNewest = later.every((one) => one.ingredient !== ingredient)
      return {
        ...change,
        name: name(ingredient),
        isNewest,
        held: isNewest ? (open[ingredient]?.held ?? []) : [],
        find: isNewest ? (open[ingredient]?.find ?? []) : [],
        before: isNewest ? pansBefore(state, ingredient) : [],
        reprint: goesInto(station, ingredient).map((id) => groups.get(id) ?? id),
      }
    })
    .reverse()
}
