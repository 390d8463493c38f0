/**
 * A second opinion on needs: slow, plain, over every ingredient, written from the rules and not
 * from the engine, of which it imports nothing.
 */
import type {
  Component,
  Declaration,
  Ingredient,
  StationDocument,
} from '#lib/station/station-document.ts'
import {
  ALLERGENS_OF_TRAITS,
  CLAIMED,
  COMES_OF,
  DIETS,
  GLUTEN_GRAINS,
  groupsOf,
  hasToName,
  isOneOf,
  MEATS,
  type Rule,
} from '#tests/lib/needs/oracle/laws.ts'

type Word = Declaration

/** From what nobody may accept to what is not worth a word. */
export const CLASSES = ['no', 'caution', 'ask', 'note', 'ok'] as const
export type Class = (typeof CLASSES)[number]

export interface Place {
  readonly station: StationDocument
  /** Pans that a scoop of another component went into. */
  readonly soiled: readonly { readonly component: string; readonly by: string }[]
  /** Scoops of `by` that are used for another component. */
  readonly lent: readonly { readonly component: string; readonly by: string }[]
  readonly ready: readonly string[]
}

export interface AskedFor {
  readonly code: string
  readonly handling: 'keep-apart' | 'leave-out'
}

/** A component and one need: its class, why, what it may be noted for, and from which pan. */
export interface Opinion {
  readonly class: Class
  /** Reasons of the class `no`, `caution` or `ask`; each has to be named. */
  readonly named: readonly string[]
  readonly noted: readonly string[]
  readonly fromBackup: boolean
}

const worst = (words: readonly Word[]): Word => {
  for (const word of ['contains', 'unknown', 'may-contain', 'not-listed'] as const)
    if (words.includes(word)) return word
  return 'free'
}

const kindsIn = (station: StationDocument, group: string): readonly string[] =>
  groupsOf(station)[group] ?? []

/**
 * Gluten, 21 CFR 101.91: barley, rye and crosses of the grains are gluten; wheat is, unless the label
 * declares it free of gluten and explains beside the word "wheat" how that can be. Of cereals with
 * gluten that are in it, and of which none is named, nobody knows whether they are those.
 */
const glutenOf = (station: StationDocument, ingredient: Ingredient): Word => {
  const said = ingredient.declarations
  const cross = ingredient.traits?.includes('gluten-grain') ?? false
  if (said.barley === 'contains' || said.rye === 'contains') return 'contains'
  if (said.wheat === 'contains')
    return said.gluten === 'free' && ingredient.glutenStatement ? 'free' : 'contains'
  if (cross) return 'contains'
  const word = said.gluten ?? 'unknown'
  if (word === 'unknown' || word === 'not-listed') {
    const cereals = ['wheat', 'rye', 'barley', 'oats'].map((one) =>
      labelled(station, ingredient, one),
    )
    const isNone = cereals.every((one) => one === 'not-listed' || one === 'free')
    return ingredient.law === 'eu-14' && isNone ? 'not-listed' : 'unknown'
  }
  if (word === 'contains') return 'contains'
  const cereals = groupsOf(station)['gluten-cereals']
  const isWhichSaid =
    !cereals ||
    said['gluten-cereals'] !== 'contains' ||
    cereals.some((one) => said[one] === 'contains') ||
    GLUTEN_GRAINS.every((one) => said[one] === 'free' || said[one] === 'may-contain')
  return isWhichSaid ? word : 'unknown'
}

/** A kind that a label needn't name says nothing where it isn't listed. */
const saidOfKind = (
  { declarations, law }: Ingredient,
  group: string,
  kind: string,
): readonly Word[] => {
  const said = declarations[kind]
  if (said === undefined) return []
  return [said === 'not-listed' && !isOneOf(law, group, kind) ? 'unknown' : said]
}

/** What the label says of an allergen, before it is asked whether anybody has read it. */
const labelled = (station: StationDocument, ingredient: Ingredient, code: string): Word => {
  if (code === 'gluten') return glutenOf(station, ingredient)
  const said = ingredient.declarations
  const own = said[code]
  const ofKinds = kindsIn(station, code).flatMap((kind) => saidOfKind(ingredient, code, kind))
  const isEmpty = own === 'not-listed' && !hasToName(station, ingredient.law, code)
  const word = own === undefined ? undefined : isEmpty ? own : worst([own, ...ofKinds])
  if (word !== undefined && word !== 'not-listed') return word
  const [group, kinds] = Object.entries(groupsOf(station)).find(([, all]) =>
    all.includes(code),
  ) ?? [null, []]
  if (word === 'not-listed' && hasToName(station, ingredient.law, code)) {
    // Of a group that is in it, or may be, and of which no kind is named, it may be this one.
    const ofGroup = group === null ? undefined : said[group]
    const isNamed = kinds.some((kind) => said[kind] === ofGroup)
    if (ofGroup === 'contains' && !isNamed) return 'unknown'
    return ofGroup === 'may-contain' && !isNamed ? 'may-contain' : 'not-listed'
  }
  if (group !== null) {
    const byGroup = said[group]
    if (byGroup === undefined) return 'unknown'
    if (byGroup === 'not-listed' && !isOneOf(ingredient.law, group, code)) return 'unknown'
    const ofGroup = worst([
      byGroup,
      ...kinds.flatMap((kind) => saidOfKind(ingredient, group, kind)),
    ])
    return ofGroup === 'contains' ? 'unknown' : ofGroup
  }
  return ofKinds.includes('contains') ? 'contains' : 'unknown'
}

/** What may contain salmon may contain fish, whether or not the label names fish. */
const warnsOf = (station: StationDocument, ingredient: Ingredient, allergen: string): boolean =>
  [allergen, ...kindsIn(station, allergen)].some(
    (code) => ingredient.declarations[code] === 'may-contain',
  )

/** What a trait is made of by its label's word: nothing where that isn't named. */
const comesOf = (ingredient: Ingredient, trait: string): readonly string[] => {
  for (const one of ['stock', 'lard', 'gelatin', 'animal-rennet'] as const)
    if (one === trait)
      return (ingredient.sources?.[one] ?? []).filter((of) =>
        COMES_OF[one].some((other) => other === of),
      )
  return []
}

/** One trait to one diet: never eaten, eaten if it is of the right animal, or eaten. */
const eatenOf = (
  ingredient: Ingredient,
  trait: string,
  { never, dependsOnTheAnimal }: Rule,
): Word => {
  const of = comesOf(ingredient, trait)
  if (of.length > 0 && of.every((one) => one === 'plants')) return 'free'
  if (never.includes(trait)) return 'contains'
  for (const one of of) if (never.includes(one === 'other-animal' ? 'meat' : one)) return 'contains'
  if (of.length > 0 || !dependsOnTheAnimal.includes(trait)) return 'free'
  const beside: readonly string[] = ingredient.traits ?? []
  return trait === 'meat' && MEATS.some((one) => beside.includes(one)) ? 'free' : 'unknown'
}

const eaten = (station: StationDocument, ingredient: Ingredient, diet: string): Word => {
  const rule = DIETS[diet] ?? { never: [], dependsOnTheAnimal: [] }
  const linked = rule.never.flatMap((trait) => ALLERGENS_OF_TRAITS[trait] ?? [])
  const made = (ingredient.traits ?? []).map((trait) => eatenOf(ingredient, trait, rule))
  if (made.includes('contains')) return 'contains'
  if (linked.some((allergen) => labelled(station, ingredient, allergen) === 'contains'))
    return 'contains'
  if (ingredient.traits === null) return 'unknown'
  if (made.includes('unknown')) return 'unknown'
  if (
    linked.some(
      (allergen) =>
        groupsOf(station)[allergen] !== undefined &&
        labelled(station, ingredient, allergen) === 'unknown',
    )
  )
    return 'unknown'
  return linked.some((allergen) => warnsOf(station, ingredient, allergen)) ? 'may-contain' : 'free'
}

const claimed = (ingredient: Ingredient, claim: (typeof CLAIMED)[number]): Word => {
  const said = ingredient.claims[claim]
  if (said === undefined) return 'unknown'
  return said === 'declared' ? 'free' : 'contains'
}

export const wordOfIngredient = (
  station: StationDocument,
  ingredient: Ingredient,
  code: string,
): Word => {
  const claim = CLAIMED.find((one) => one === code)
  const word =
    claim !== undefined
      ? claimed(ingredient, claim)
      : DIETS[code] !== undefined
        ? eaten(station, ingredient, code)
        : labelled(station, ingredient, code)
  return ingredient.readOn === null && word !== 'contains' ? 'unknown' : word
}

/** Every ingredient, through recipes and the recipes in them. */
export const ingredientsOf = (
  station: StationDocument,
  made: Pick<Component, 'ingredients' | 'recipes'>,
): readonly Ingredient[] => [
  ...station.ingredients.filter((one) => made.ingredients.includes(one.id)),
  ...station.recipes
    .filter((one) => made.recipes.includes(one.id))
    .flatMap((one) => ingredientsOf(station, one)),
]

/** What a component declares: the worst of its ingredients. */
export const wordOf = (station: StationDocument, component: string, code: string): Word => {
  const made = station.components.find((one) => one.id === component)
  if (!made) throw new Error(`no component ${component}`)
  return worst(ingredientsOf(station, made).map((one) => wordOfIngredient(station, one, code)))
}

interface Touch {
  readonly kind: string
  /** Whose pans get something by it. */
  readonly into: readonly string[]
  /** Of what they get something. */
  readonly of: readonly string[]
}

/**
 * What is shared goes to all that share it, and a lent scoop is shared. A scoop that went into another
 * pan once left something there; what it took back is told of its own pan apart.
 */
const touchesOf = ({ station, soiled, lent }: Place): readonly Touch[] => [
  ...(station.contacts ?? []).map(({ kind, components }) => ({
    kind,
    into: components,
    of: components,
  })),
  ...lent.flatMap(({ component, by }) => [
    { kind: 'scoop', into: [component], of: [by] },
    { kind: 'scoop', into: [by], of: [component] },
  ]),
  ...soiled.map(({ component, by }) => ({ kind: 'scoop', into: [component], of: [by] })),
]

/** Kinds that a pan of its own behind the line, with its own scoop, takes away. */
const GONE_WITH_ITS_OWN_PAN = ['scoop', 'beside', 'reached-over']

/** Everything that can be on `component`, by way of others; from its own pan, what still can. */
export const reachedFrom = (
  place: Place,
  component: string,
  isOwnPan: boolean,
): ReadonlySet<string> => {
  const touches = touchesOf(place)
  const first = touches.filter((one) => !isOwnPan || !GONE_WITH_ITS_OWN_PAN.includes(one.kind))
  const found = new Set(
    first
      .filter((one) => one.into.includes(component))
      .flatMap((one) => one.of)
      .filter((one) => one !== component),
  )
  for (let before = -1; before !== found.size; ) {
    before = found.size
    for (const { into, of } of touches)
      if (into.some((one) => found.has(one))) for (const one of of) found.add(one)
  }
  found.delete(component)
  return found
}

/** What may have it in it, which gets from it into others. */
const mayHave = (word: Word): boolean => word !== 'free' && word !== 'not-listed'

/** Of a component's own pan on the line: what a need meets there. */
const opinionOf = (
  { station, ready }: Place,
  component: string,
  need: AskedFor,
  word: Word,
  touched: Word,
  touchedFromItsOwn: Word,
  isSoiled: boolean,
): Opinion => {
  const noted: string[] = []
  if (word === 'contains') return { class: 'no', named: ['contains'], noted, fromBackup: false }
  if (need.handling === 'leave-out') {
    if (word === 'may-contain') noted.push('may-contain')
    if (station.contacts === null) noted.push('contact-unknown')
    if (isSoiled) noted.push('soiled')
    if (mayHave(touched)) noted.push('contact')
    if (word === 'not-listed') noted.push('not-listed')
    if (word === 'unknown') return { class: 'ask', named: ['unknown'], noted, fromBackup: false }
    return { class: noted.length > 0 ? 'note' : 'ok', named: [], noted, fromBackup: false }
  }
  if (word === 'unknown') return { class: 'no', named: ['unknown'], noted, fromBackup: false }
  if (station.contacts === null)
    return { class: 'no', named: ['contact-unknown'], noted, fromBackup: false }
  const hasItsOwn =
    ready.includes(component) &&
    station.backups.some((one) => one.component === component && one.protected)
  const fromBackup = mayHave(touched) && hasItsOwn && !mayHave(touchedFromItsOwn)
  const named = [
    ...(word === 'may-contain' ? ['may-contain'] : []),
    ...(isSoiled && !fromBackup ? ['soiled'] : []),
    ...(mayHave(touched) && !fromBackup ? ['contact'] : []),
    ...(word === 'not-listed' && station.notListed === 'caution' ? ['not-listed'] : []),
  ]
  if (word === 'not-listed' && station.notListed === 'fits') noted.push('not-listed')
  const whenNamed = station.cautions === 'block' ? 'no' : 'caution'
  const whenNone = noted.length > 0 ? 'note' : 'ok'
  return { class: named.length > 0 ? whenNamed : whenNone, named, noted, fromBackup }
}

/** What a component's scoop carries: itself, or where it is free the worst that has been on it. */
export const carriedBy = (place: Place, component: string, code: string): Word => {
  const own = wordOf(place.station, component, code)
  if (mayHave(own) || place.station.contacts === null) return own
  const others = [...reachedFrom(place, component, false)]
  const carried = worst(others.map((one) => wordOf(place.station, one, code)))
  return mayHave(carried) ? carried : own
}

/** Opinions of one place on any component and need, each worked out once. */
export const createOracle = (place: Place) => {
  const words = new Map<string, Word>()
  const word = (component: string, code: string): Word => {
    const key = `${component} ${code}`
    const known = words.get(key) ?? wordOf(place.station, component, code)
    words.set(key, known)
    return known
  }
  const reaches = new Map(
    place.station.components.map(({ id }) => [
      id,
      { line: reachedFrom(place, id, false), own: reachedFrom(place, id, true) },
    ]),
  )
  /** A scoop of what isn't free of it, or of what something that isn't free of it has touched. */
  const isSoiledFor = (component: string, code: string): boolean =>
    place.soiled.some(
      (one) =>
        one.component === component &&
        (mayHave(word(one.by, code)) ||
          (place.station.contacts !== null &&
            [...reachedFrom(place, one.by, false)].some((other) => mayHave(word(other, code))))),
    )
  return (component: string, need: AskedFor): Opinion => {
    const reach = reaches.get(component)
    if (!reach) throw new Error(`no component ${component}`)
    const over = (others: ReadonlySet<string>): Word =>
      worst([...others].map((one) => word(one, need.code)))
    return opinionOf(
      place,
      component,
      need,
      word(component, need.code),
      over(reach.line),
      over(reach.own),
      isSoiledFor(component, need.code),
    )
  }
}
