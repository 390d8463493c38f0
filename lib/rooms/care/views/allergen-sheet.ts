/** Items and components by allergen, as guests and inspectors read them. */

import { isInIt } from '#lib/needs/allergen-word.ts'
import type { Lent, Soil } from '#lib/needs/contact.ts'
import { waysTo } from '#lib/needs/declared.ts'
import { type FactsOf, factsOf } from '#lib/needs/kitchen.ts'
import { kitchenOf } from '#lib/rooms/care/facts/kitchen-of.ts'
import { kindsNamed, warnedBeside } from '#lib/rooms/care/views/named-kinds.ts'
import type { RunningState } from '#lib/service/state.ts'
import { ALLERGEN_SETS } from '#lib/station/codes/allergen-sets.ts'
import type { NeedCode } from '#lib/station/codes/codes.ts'
import { isStated } from '#lib/station/gluten.ts'
import { nameIn } from '#lib/station/name-in.ts'
import { asReadOn } from '#lib/station/read-again.ts'
import type { Component, Item, StationDocument } from '#lib/station/station-document.ts'

/** The worst first. `shared`: not in it by its own labels, and reached by something that may be. */
export const SHEET_WORDS = [
  'contains',
  'unknown',
  'may-contain',
  'shared',
  'not-listed',
  'free',
] as const
export type SheetWord = (typeof SHEET_WORDS)[number]

/** What a sheet is made of, so that it can be read without following a service. */
export interface SheetFacts {
  readonly station: StationDocument
  readonly revision: number
  readonly soiled: readonly Soil[]
  readonly lent: readonly Lent[]
  /** When a label last changed, else when the service opened; null where that isn't known. */
  readonly asOf: number | null
  /** Civil date by which labels are too old; where it is left away none is. */
  readonly servedOn?: string
}

/** What the server answers to whoever asks for the sheet. */
export interface SheetAnswer {
  /** Server's time, epoch milliseconds. */
  readonly at: number
  /** null where no station is set up. */
  readonly facts: SheetFacts | null
  /** It is the demo's: nobody is served by it. */
  readonly demo?: true
}

export interface SheetCell {
  readonly word: SheetWord
  /** Kinds of the group that the labels name, where it is contained or warned of in these alone. */
  readonly kinds: readonly NeedCode[]
  /** Of an item: some of it goes when something is left out or the base is swapped. */
  readonly canChange: boolean
}

export interface SheetRow {
  readonly id: string
  readonly name: string
  readonly cells: readonly SheetCell[]
  /** Civil date on which the oldest of its labels was read; null where one never was. */
  readonly readOn: string | null
  /** Names of ingredients whose labels nobody has read, or too long ago. */
  readonly unread: readonly string[]
  /** Names of components whose scoop went into it. */
  readonly soiledBy: readonly string[]
  /** Its wheat that is declared free of gluten: by which labels' statements, and when they were read. */
  readonly stated: readonly { readonly name: string; readonly readOn: string }[]
}

export interface Sheet {
  readonly station: string
  /** Made up to try the tool with: not for real guests. */
  readonly invented: boolean
  readonly timeZone: string
  readonly revision: number
  readonly asOf: number | null
  readonly codes: readonly NeedCode[]
  readonly items: readonly SheetRow[]
  readonly components: readonly SheetRow[]
  readonly unread: readonly string[]
  /** False where nobody has said what touches what. */
  readonly contactKnown: boolean
}

/** What the sheet of a service is made of, as it stands now. */
export const sheetFacts = (state: RunningState): SheetFacts => ({
  station: state.station,
  revision: state.revision,
  soiled: kitchenOf(state).soiled,
  lent: kitchenOf(state).lent,
  asOf: state.labelChanges.at(-1)?.at ?? state.openedAt,
  ...(state.servedOn === undefined ? {} : { servedOn: state.servedOn }),
})

/** The station's set, gluten and molluscs beside it, and what the station adds. */
export const sheetCodes = ({
  allergenSet,
  ownAllergens,
}: Pick<StationDocument, 'allergenSet' | 'ownAllergens'>): readonly NeedCode[] => [
  ...new Set([
    ...ALLERGEN_SETS[allergenSet].groups.map((one) => one.code),
    'molluscs',
    'gluten',
    ...ownAllergens,
  ]),
]

const worst = (words: readonly SheetWord[]): SheetWord =>
  SHEET_WORDS.find((word) => words.includes(word)) ?? 'unknown'

const better = (one: SheetWord, other: SheetWord): boolean =>
  SHEET_WORDS.indexOf(one) > SHEET_WORDS.indexOf(other)

const wordOf = (
  facts: FactsOf,
  soiled: readonly Soil[],
  component: string,
  code: NeedCode,
): SheetWord => {
  const { declared, touched, contactUnknown } = facts(component, code)
  if (declared.state === 'contains') return 'contains'
  if (contactUnknown) return 'unknown'
  if (isInIt(declared.state)) return declared.state
  const scoops = soiled.filter((one) => one.component === component)
  if (scoops.some(({ by }) => isInIt(facts(by, code).declared.state))) return 'may-contain'
  return touched ? 'shared' : declared.state
}

/** Components that go into an item whatever is left out; of the bases, any one of the choices. */
const staying = (item: Item): readonly string[] =>
  item.parts
    .filter((part) => part.required || part.component === item.heart)
    .map((part) => part.component)

const possible = (item: Item): readonly string[] => [
  ...(item.base?.choices ?? []),
  ...item.parts.map((part) => part.component),
]

const oldest = (dates: readonly (string | null)[]): string | null =>
  dates.length === 0 || dates.includes(null)
    ? null
    : dates.reduce((one, other) => ((other ?? '') < (one ?? '') ? other : one), dates[0] ?? null)

const NOTHING: readonly string[] = []

/** @throws where the document is damaged; then there is no sheet. */
export const sheetOf = ({ station: document, servedOn, ...of }: SheetFacts): Sheet => {
  const { revision, soiled, lent, asOf } = of
  const station = asReadOn(document, servedOn)
  const readOn = new Map(document.ingredients.map((one) => [one.id, one.readOn]))
  const facts = factsOf({ station, soiled, lent, ready: NOTHING })
  const codes = sheetCodes(station)
  const name = nameIn(station)
  const known = new Map(station.ingredients.map((one) => [one.id, one]))
  const ingredientsOf = (component: Component) =>
    [...new Set([...waysTo(station, component)].map((way) => way.at(-1) ?? ''))].flatMap(
      (id) => known.get(id) ?? [],
    )
  /** One word has one cell: where another kind is warned of beside it, the group alone is said. */
  const namedKinds = (component: Component, code: NeedCode, word: SheetWord) => {
    if (word !== 'contains' && word !== 'may-contain') return []
    if (facts(component.id, code).soiled !== null) return []
    const ingredients = ingredientsOf(component)
    const isOther = word === 'contains' && warnedBeside(station, ingredients, code)?.length !== 0
    return isOther ? [] : kindsNamed(station, ingredients, code, word)
  }

  const rowOf = (component: Component): SheetRow => {
    const ingredients = ingredientsOf(component)
    return {
      id: component.id,
      name: component.name,
      cells: codes.map((code) => {
        const word = wordOf(facts, soiled, component.id, code)
        return { word, kinds: namedKinds(component, code, word), canChange: false }
      }),
      readOn: oldest(ingredients.map((one) => readOn.get(one.id) ?? null)),
      unread: ingredients.filter((one) => one.readOn === null).map((one) => one.name),
      soiledBy: soiled.filter((one) => one.component === component.id).map(({ by }) => name(by)),
      stated: ingredients.flatMap((one) =>
        one.readOn !== null && isStated(one) ? [{ name: one.name, readOn: one.readOn }] : [],
      ),
    }
  }
  const rows = new Map(station.components.map((one) => [one.id, rowOf(one)]))
  const cellsAt = (ids: readonly string[], place: number) =>
    ids.flatMap((id) => rows.get(id)?.cells[place] ?? [])
  const wordsAt = (ids: readonly string[], place: number) =>
    cellsAt(ids, place).map((one) => one.word)

  const itemCell = (item: Item, place: number): SheetCell => {
    const all = cellsAt(possible(item), place)
    const word = worst(all.map((one) => one.word))
    const bases = wordsAt(item.base?.choices ?? [], place)
    const bestBase = bases.filter((one) => !bases.some((other) => better(other, one))).slice(0, 1)
    const least = worst([...wordsAt(staying(item), place), ...bestBase])
    const named = all.filter((one) => one.word === word).map(({ kinds }) => kinds)
    const kinds = [...new Set(named.flat())]
    const isOther = all.some(
      (one) =>
        one.word === 'unknown' ||
        (one.word === 'may-contain' &&
          (one.kinds.length === 0 || one.kinds.some((kind) => !kinds.includes(kind)))),
    )
    return {
      word,
      kinds: isOther || named.some((one) => one.length === 0) ? [] : kinds,
      // What stays and isn't known is no less of it.
      canChange: least !== 'unknown' && better(least, word),
    }
  }
  const itemRow = (item: Item): SheetRow => {
    const own = possible(item).flatMap((id) => rows.get(id) ?? [])
    return {
      id: item.id,
      name: item.name,
      cells: codes.map((_, place) => itemCell(item, place)),
      readOn: oldest(own.map((one) => one.readOn)),
      unread: [...new Set(own.flatMap((one) => one.unread))],
      soiledBy: NOTHING,
      stated: [],
    }
  }
  const components = station.components.map(({ id }) => rows.get(id)).filter((one) => !!one)
  return {
    station: station.name,
    invented: station.invented,
    timeZone: station.timeZone,
    revision,
    asOf,
    codes,
    items: station.items.map(itemRow),
    components,
    unread: [...new Set(components.flatMap((one) => one.unread))],
    contactKnown: station.contacts !== null,
  }
}
