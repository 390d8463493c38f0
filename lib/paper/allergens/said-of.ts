/** What is said of a food's allergens on paper: by its labels, by the line, and what nobody knows. */
import { waysTo } from '#lib/needs/declared.ts'
import { factsOf, type Kitchen } from '#lib/needs/kitchen.ts'
import { sheetCodes } from '#lib/rooms/care/views/allergen-sheet.ts'
import { kindsNamed, warnedBeside } from '#lib/rooms/care/views/named-kinds.ts'
import { isGroup, kindsOf } from '#lib/station/codes/askable.ts'
import type { NeedCode } from '#lib/station/codes/codes.ts'
import { componentOf } from '#lib/station/find.ts'
import { nameIn } from '#lib/station/name-in.ts'
import type { Component, StationDocument } from '#lib/station/station-document.ts'

export interface NamedAllergen {
  readonly code: NeedCode
  /** Kinds of it that labels name; none where one names the group alone, or isn't known. */
  readonly kinds: readonly NeedCode[]
}

export interface SaidOf {
  readonly contains: readonly NamedAllergen[]
  /** As labels warn, or since a wrong scoop went in; of what is contained in kinds, other kinds. */
  readonly mayContain: readonly NamedAllergen[]
  /** Not in it by its own labels, as itself or as one of its kinds, and reached on this line by what has it, or may. */
  readonly touches: readonly NeedCode[]
  /** Reached on this line by something of which nobody knows whether it has it. */
  readonly touchesUnknown: readonly NeedCode[]
  /** Labels were read, and don't say of it what its law or the station asks for. */
  readonly notKnown: readonly NeedCode[]
  /** Asked for beside that set, as gluten: no law makes a label say it, and none does. */
  readonly unsaid: readonly NeedCode[]
  /** Names of what it is made of whose label nobody has read, or too long ago. */
  readonly unread: readonly string[]
  /** False: nobody has said what touches what. */
  readonly contactKnown: boolean
  /** Names of components whose scoop went into it. */
  readonly soiledBy: readonly string[]
}

const ingredientIds = (station: StationDocument, component: Component): readonly string[] => [
  ...new Set([...waysTo(station, component)].map((way) => way.at(-1) ?? '')),
]

/** Whether the station's set has it, or the station added it. */
const isAsked = (station: StationDocument, code: NeedCode): boolean =>
  isGroup(station, code) || station.ownAllergens.some((one) => one === code)

/**
 * Of one component in a kitchen as it is now, in its pan on the line or in a protected one behind it.
 * Unknown never counts as none: what isn't known is named, as are the labels that nobody read.
 * @throws where the document is damaged
 */
export const saidOf = (
  kitchen: Kitchen,
  component: string,
  where: 'line' | 'protected' = 'line',
): SaidOf => {
  const { station } = kitchen
  const soiled = where === 'line' ? kitchen.soiled : (kitchen.soiledBehind ?? [])
  const own = componentOf(station, component)
  const facts = factsOf(kitchen)
  const ids = ingredientIds(station, own)
  const known = new Map(station.ingredients.map((one) => [one.id, one]))
  const ingredients = ids.flatMap((id) => known.get(id) ?? [])
  const factsFor = (code: NeedCode) => {
    const one = facts(component, code)
    return where === 'line'
      ? { code, declared: one.declared, touched: one.touched, soiled: one.soiled }
      : { code, declared: one.declared, touched: one.touchedInBackup, soiled: one.soiledBackup }
  }
  const said = sheetCodes(station).map(factsFor)
  const isContained = ({ declared }: (typeof said)[number]) => declared.state === 'contains'
  const others = said.filter((one) => !isContained(one))
  const isWarned = (one: (typeof said)[number]) =>
    one.declared.state === 'may-contain' ||
    (one.soiled !== null && one.soiled.declared.state !== 'unknown')
  const unknown = others
    .filter(
      (one) =>
        !isWarned(one) &&
        (one.declared.state === 'unknown' || one.soiled?.declared.state === 'unknown'),
    )
    .map(({ code }) => code)
  const contained = said.filter(isContained).map(({ code, soiled: scoop }) => ({
    code,
    scoop,
    kinds: kindsNamed(station, ingredients, code, 'contains'),
  }))
  // Where kinds are named, the others aren't said by the group's name.
  const byKind = contained.filter(({ kinds }) => kinds.length > 0)
  const warnedKinds = byKind.flatMap(({ code, scoop }): NamedAllergen[] => {
    const warned = warnedBeside(station, ingredients, code)
    if (warned === null || scoop !== null) return [{ code, kinds: [] }]
    return warned.length === 0 ? [] : [{ code, kinds: warned }]
  })
  const touchedKinds = byKind
    .flatMap(({ code, kinds }) => kindsOf(station, code).filter((kind) => !kinds.includes(kind)))
    .map(factsFor)
    .filter(
      (one) =>
        one.touched?.declared.state === 'contains' || one.touched?.declared.state === 'may-contain',
    )
  const touched = [
    ...others.filter((one) => !isWarned(one) && one.touched !== null),
    ...touchedKinds,
  ]
  const touchedBy = (is: boolean) =>
    touched
      .filter((one) => (one.touched?.declared.state === 'unknown') === is)
      .map(({ code }) => code)
  return {
    contains: contained.map(({ code, kinds }) => ({ code, kinds })),
    mayContain: [
      ...others.filter(isWarned).map(({ code, soiled: scoop }) => ({
        code,
        kinds: scoop === null ? kindsNamed(station, ingredients, code, 'may-contain') : [],
      })),
      ...warnedKinds,
    ],
    touches: touchedBy(false),
    touchesUnknown: touchedBy(true).filter((code) => isAsked(station, code)),
    notKnown: unknown.filter((code) => isAsked(station, code)),
    unsaid: unknown.filter((code) => !isAsked(station, code)),
    unread: ids.flatMap((id) => {
      const one = known.get(id)
      return one === undefined ? [id] : one.readOn === null ? [one.name] : []
    }),
    contactKnown: station.contacts !== null,
    soiledBy: soiled
      .filter((one) => one.component === component)
      .map(({ by }) => nameIn(station)(by)),
  }
}

/** All labels were read, say what they have to, and name nothing. */
export const isNothingNamed = ({ contains, mayContain, notKnown, unread }: SaidOf): boolean =>
  [contains, mayContain, notKnown, unread].every((all) => all.length === 0)
