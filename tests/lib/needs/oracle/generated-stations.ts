/** Whole station documents out of a seed: every way in which a kitchen can be told about needs. */

import { TRAITS } from '#lib/station/codes/diets.ts'
import { stationSchema } from '#lib/station/schema.ts'
import { CONTACT_KINDS } from '#lib/station/shapes/station-parts-schema.ts'
import type {
  Component,
  Contact,
  Declaration,
  Ingredient,
  Item,
  Part,
  Recipe,
  StationDocument,
} from '#lib/station/station-document.ts'
import {
  ALLERGENS_OF_TRAITS,
  allergenCodes,
  CLAIMED,
  COMES_OF,
  groupsOf,
} from '#tests/lib/needs/oracle/laws.ts'
import type { Place } from '#tests/lib/needs/oracle/oracle.ts'
import { createRandom, type Random } from '#tests/lib/needs/oracle/random.ts'
import { backup } from '#tests/support/kitchens.ts'

type Set = Pick<StationDocument, 'allergenSet' | 'ownAllergens'>

const names = (prefix: string, count: number): string[] =>
  Array.from({ length: count }, (_, index) => `${prefix}-${index + 1}`)

/** Shares in a thousand of what a label says of a group; the rest is declared free. */
const SAID: readonly (readonly [Declaration | null, number])[] = [
  ['contains', 22],
  ['may-contain', 30],
  ['unknown', 8],
  [null, 25],
]

const said = (random: Random, muddle: number): Declaration | null => {
  let place = random.below(1000) / muddle
  for (const [word, share] of SAID) {
    if (place < share) return word
    place -= share
  }
  return 'free'
}

const declarations = (random: Random, set: Set, muddle: number) => {
  const groups = groupsOf(set)
  const kinds = new Map(
    Object.entries(groups).flatMap(([group, all]) => all.map((one) => [one, group])),
  )
  const words: Record<string, Declaration> = {}
  for (const code of allergenCodes(set)) {
    const group = kinds.get(code)
    if (group === undefined) {
      // What is free of wheat is often not declared free of gluten.
      const word = code === 'gluten' && random.chance(0.15) ? null : said(random, muddle)
      if (word !== null) words[code] = word
    } else if (words[group] === 'free') {
      if (random.chance(0.05)) words[code] = 'free'
    } else if (random.chance(0.3))
      words[code] = random.one(['contains', 'may-contain', 'free', 'free', 'unknown'])
  }
  return words
}

/** Traits that agree with the declarations, and declarations that agree with the traits. */
const traits = (random: Random, set: Set, words: Record<string, Declaration>) => {
  const found = TRAITS.filter((trait) => {
    if (random.chance(trait === 'gluten-grain' || trait === 'honey' ? 0.08 : 0.03)) return true
    return (ALLERGENS_OF_TRAITS[trait] ?? []).some((allergen) =>
      [allergen, ...(groupsOf(set)[allergen] ?? [])].some((code) => words[code] === 'contains'),
    )
  })
  const sourced = TRAITS.filter((one) => Object.hasOwn(COMES_OF, one))
  // What is of one animal is often of another too, each with a source of its own.
  if (found.some((one) => sourced.includes(one)) && random.chance(0.5))
    for (const more of random.some(sourced, 1)) if (!found.includes(more)) found.push(more)
  for (const trait of found)
    for (const allergen of ALLERGENS_OF_TRAITS[trait] ?? []) {
      if (words[allergen] !== 'free' || trait === 'shellfish') continue
      if (random.chance(0.5)) delete words[allergen]
      else words[allergen] = 'contains'
    }
  return found
}

/** Wheat beside which the label declares it free of gluten; whether with the statement for that. */
const wheatDeclaredFree = (random: Random, words: Record<string, Declaration>): boolean => {
  if (random.chance(0.08)) {
    words.wheat = 'contains'
    words.gluten = 'free'
    if (words['gluten-cereals'] === 'free') words['gluten-cereals'] = 'contains'
  }
  const isStatedOnly =
    words.wheat === 'contains' &&
    words.gluten === 'free' &&
    words.barley !== 'contains' &&
    words.rye !== 'contains'
  return isStatedOnly && random.chance(0.5)
}

/** What some traits come of, now and then not said; never a fish that the label denies. */
const sourcesOf = (
  random: Random,
  set: Set,
  made: Ingredient['traits'],
  words: Record<string, Declaration>,
): Ingredient['sources'] => {
  const isContained = (allergen: string) =>
    [allergen, ...(groupsOf(set)[allergen] ?? [])].some((code) => words[code] === 'contains')
  const found: Ingredient['sources'] = {}
  for (const trait of ['stock', 'lard', 'gelatin', 'animal-rennet'] as const) {
    if (!made?.includes(trait) || random.chance(0.3)) continue
    const can = COMES_OF[trait].filter((one) => (ALLERGENS_OF_TRAITS[one] ?? []).every(isContained))
    found[trait] = random.some(can, random.one([0, 1, 1, 1, 2]))
  }
  return found
}

/**
 * Of what is declared free, some that isn't listed only, with kinds that are warned of beside it; drawn
 * apart, so that stations keep the shape that they had before there was any.
 */
const unlisted = (random: Random, set: Set, words: Record<string, Declaration>): void => {
  const isWheatFree = words.wheat === 'contains' && words.gluten === 'free'
  for (const code of Object.keys(words))
    if (words[code] === 'free' && !(code === 'gluten' && isWheatFree) && random.chance(0.15))
      words[code] = 'not-listed'
  for (const [group, kinds] of Object.entries(groupsOf(set)))
    for (const kind of kinds) {
      if (words[group] === 'free' && words[kind] !== undefined) words[kind] = 'free'
      if (words[group] === 'not-listed' && random.chance(0.08))
        words[kind] = random.one(['not-listed', 'free', 'may-contain', 'unknown'])
    }
}

const ingredient = (random: Random, set: Set, id: string, apart: Random): Ingredient => {
  const words = declarations(random, set, random.chance(0.12) ? 8 : 1)
  const isStated = wheatDeclaredFree(random, words)
  const made = random.chance(0.04) ? null : traits(random, set, words)
  const claims: Ingredient['claims'] = {}
  for (const claim of CLAIMED)
    if (random.chance(0.93)) claims[claim] = random.chance(0.96) ? 'declared' : 'not'
  const isRead = !random.chance(0.05)
  const sources = sourcesOf(random, set, made, words)
  const law = apart.one(['us-9', 'eu-14', set.allergenSet, set.allergenSet, null] as const)
  unlisted(apart, set, words)
  return {
    id,
    name: id,
    declarations: words,
    traits: made,
    ...(Object.keys(sources ?? {}).length > 0 ? { sources } : {}),
    ...(isStated ? { glutenStatement: true } : {}),
    claims,
    ...(law === null ? {} : { law }),
    readOn: isRead ? '2026-11-20' : null,
    readBy: isRead ? 'person in charge' : null,
  }
}

/** Each made of ingredients, or of recipes of the level before, down to three below another. */
const recipes = (random: Random, from: readonly string[]): Recipe[] => {
  const all: Recipe[] = []
  let before: readonly string[] = []
  for (const level of ['base', 'mix', 'blend']) {
    const ids = names(level, before.length > 0 || level === 'base' ? random.below(4) : 0)
    for (const id of ids)
      all.push({
        id,
        name: id,
        ingredients: random.some(from, before.length > 0 ? random.below(2) : 1 + random.below(3)),
        recipes: before.length > 0 ? random.some(before, 1 + random.below(2)) : [],
      })
    before = ids
  }
  return all
}

const component = (
  random: Random,
  id: string,
  from: readonly string[],
  made: readonly Recipe[],
): Component => {
  const inIt = random.chance(0.4) ? random.some(made, 1).map((one) => one.id) : []
  return {
    id,
    name: id,
    short: [id.slice(0, 12)],
    ingredients: random.some(from, inIt.length > 0 ? random.below(2) : 1 + random.below(2)),
    recipes: inIt,
    held: random.one(['hot', 'cold', 'dry']),
    portion: { tool: 'piece', pieces: 1 },
    side: random.chance(0.5),
    extraCents: 0,
    warm: null,
    food: { kind: 'ready', cookedIn: 'usual', roast: false, reheatable: false },
    remake: null,
    costCents: null,
  }
}

/** How many parts can be left out: mostly few, now and then all eight. */
const optionalCount = (random: Random): number =>
  random.chance(0.03) ? 8 : random.one([1, 2, 2, 3, 3, 3, 3, 4, 4, 5])

const item = (random: Random, id: string, components: readonly Component[]): Item => {
  const shuffled = random.some(components, components.length)
  const bases = random.chance(0.3) ? [] : shuffled.splice(0, 1 + random.below(4))
  const [heart, ...others] = shuffled
  if (!heart) throw new Error('an item needs a heart')
  const stays = random.chance(0.3) ? others.splice(0, 1) : []
  const optional = others.slice(0, optionalCount(random))
  const placed = ({ side }: Component): 'in' | 'side' =>
    side && random.chance(0.4) ? 'side' : 'in'
  const [usual] = bases
  return {
    id,
    name: id,
    priceCents: 500,
    heart: heart.id,
    base: usual ? { choices: bases.map((one) => one.id), usual: random.one(bases).id } : null,
    parts: random.some<Part>(
      [
        { component: heart.id, usual: placed(heart), required: random.chance(0.5) },
        ...stays.map((one): Part => ({ component: one.id, usual: placed(one), required: true })),
        ...optional.map(
          (one): Part => ({
            component: one.id,
            usual: random.chance(0.2) ? 'no' : placed(one),
            required: false,
          }),
        ),
      ],
      12,
    ),
  }
}

const contacts = (random: Random, components: readonly string[]): Contact[] | null =>
  random.chance(0.1)
    ? null
    : names('touch', random.below(5)).map((id) => ({
        id,
        kind: random.one(CONTACT_KINDS),
        components: random.some(components, random.one([2, 2, 2, 3, 4])),
      }))

/** The station of a seed; the same for ever. Throws where it isn't a valid document. */
export const generatedStation = (seed: number): StationDocument => {
  const random = createRandom(seed)
  const set: Set = {
    allergenSet: random.one(['us-9', 'eu-14']),
    ownAllergens: random.some(['kiwi', 'coconut', 'buckwheat'], random.below(3)),
  }
  const apart = createRandom(seed + 2_000_000)
  const ingredients = names('stuff', 6 + random.below(10)).map((id) =>
    ingredient(random, set, id, apart),
  )
  const from = ingredients.map((one) => one.id)
  const made = recipes(random, from)
  const components = names('food', 8 + random.below(7)).map((id) =>
    component(random, id, from, made),
  )
  const ids = components.map((one) => one.id)
  const station = stationSchema.parse({
    format: 'level-scoop/station',
    version: 2,
    id: `generated-${seed}`,
    name: `Generated ${seed}`,
    line: {
      wells: ids.map((one) => ({
        id: `well-${one}`,
        held: components.find(({ id }) => id === one)?.held === 'hot' ? 'hot' : 'cold',
        pans: [{ id: `pan-${one}`, component: one, size: 'third', depthIn: 4, usualPortions: 20 }],
      })),
    },
    timeZone: 'Etc/UTC',
    currency: 'USD',
    ...set,
    cautions: random.chance(0.25) ? 'block' : 'ask',
    ingredients,
    recipes: made,
    components,
    items: names('item', 1 + random.below(3)).map((id) => item(random, id, components)),
    contacts: contacts(random, ids),
    backups: random
      .some(ids, random.below(ids.length))
      .map((one) => backup(one, random.chance(0.75))),
  })
  return { ...station, notListed: apart.chance(0.3) ? 'caution' : 'fits' }
}

/**
 * A line with nothing ready behind it; one with all ready and, of some, a lent scoop; one with some
 * ready, soiled pans and lent scoops.
 */
export const placesOf = (station: StationDocument, seed: number): readonly Place[] => {
  const random = createRandom(seed + 1_000_000)
  const ids = station.components.map((one) => one.id)
  const backups = station.backups.map((one) => one.component)
  const soiled = Array.from({ length: 1 + random.below(2) }, () => {
    const [pan = '', by = ''] = random.some(ids, 2)
    return { component: pan, by }
  })
  const some = random.some(backups, Math.ceil(backups.length / 2))
  const lent = Array.from({ length: random.below(3) }, () => {
    const [component = '', by = ''] = random.some(ids, 2)
    return { component, by }
  })
  return [
    { station, soiled: [], lent: [], ready: [] },
    { station, soiled: [], lent: lent.slice(0, 1), ready: backups },
    { station, soiled, lent, ready: some },
  ]
}
