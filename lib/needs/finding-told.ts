/** Why something doesn't fit a guest, down to the ingredient, ready to be said. */

import { declaredBy, declaredIn } from '#lib/needs/declared.ts'
import type { Finding, Why } from '#lib/needs/judge.ts'
import type { Handling, NeedCode } from '#lib/station/codes/codes.ts'
import { ingredientIn } from '#lib/station/ingredient-name.ts'
import { isPluralIn, nameIn } from '#lib/station/name-in.ts'
import type { ContactKind, Declaration, StationDocument } from '#lib/station/station-document.ts'

/** A finding in names instead of ids. */
export interface FindingTold {
  readonly component: string
  /** What decides it takes a verb of many: the ingredient, else the component. */
  readonly isPlural: boolean
  readonly need: NeedCode
  readonly handling: Handling
  readonly why: Why
  /** What decides it; null where that is the component itself, or isn't known. */
  readonly ingredient: string | null
  /** Its label says it, and was read more than so many days ago, which alone is why it isn't known. */
  readonly stale?: { readonly readOn: string; readonly days: number }
  readonly contact: {
    readonly component: string
    readonly isPlural: boolean
    /** How the two touch; null where something stands between them. */
    readonly by: ContactKind | null
    /** What the other one declares. */
    readonly declared: Declaration
  } | null
}

const touching = (station: StationDocument, finding: Finding): ContactKind | null => {
  const { component, touches } = finding
  if (touches === null) return null
  const edges = station.contacts ?? []
  const shared = edges.filter(
    ({ components }) => components.includes(component) && components.includes(touches),
  )
  return shared.find(({ kind }) => kind === finding.contact)?.kind ?? shared[0]?.kind ?? null
}

/** What is unknown though its label says it was read too long ago. */
const staleOf = (station: StationDocument, { why, need, touches, through }: Finding) => {
  const ingredient = station.ingredients.find(({ id }) => id === through.at(-1))
  if (why !== 'unknown' || touches !== null || !ingredient || ingredient.readOn === null)
    return null
  return declaredIn(station, ingredient, need) === 'unknown'
    ? null
    : { readOn: ingredient.readOn, days: station.readAgainDays }
}

/**
 * @param station as it is written, whatever of it is too old by now
 * @throws where the document is damaged, as the findings themselves do
 */
export const tellFinding = (station: StationDocument, finding: Finding): FindingTold => {
  const name = nameIn(station)
  const { component, need, handling, why, through, touches } = finding
  const last = through.at(-1)
  const ingredient = last === undefined ? null : ingredientIn(station)(last)
  // "Pita" of "Pita bread" says nothing more.
  const isItself = (said: string) => said.toLowerCase().startsWith(name(component).toLowerCase())
  const named = touches === null && ingredient !== null && !isItself(ingredient) ? ingredient : null
  const isPlural = isPluralIn(station)
  const stale = staleOf(station, finding)
  return {
    component: name(component),
    isPlural:
      named === null
        ? isPlural(component)
        : station.ingredients.find(({ id }) => id === last)?.plural === true,
    need,
    handling,
    why,
    ingredient: named,
    ...(stale && { stale }),
    contact:
      touches === null
        ? null
        : {
            component: name(touches),
            isPlural: isPlural(touches),
            by: touching(station, finding),
            declared: finding.states[touches] ?? declaredBy(station, touches, need).state,
          },
  }
}
