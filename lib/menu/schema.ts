/**
 * The station document as it is read from a file or the store. What it says is checked here once;
 * everything behind it works on the inferred types.
 */
import { z } from 'zod'
import { type Allergen, TRAITS, type Trait, US_NINE } from '#lib/needs/codes.ts'
import { fitsOneWell } from '#lib/quantity/well.ts'

/** Ids are keys of plain records, so a name that every record inherits can't be one. */
const id = z.string().regex(/^(?!constructor$)[a-z][a-z0-9-]{0,39}$/)
const words = z.string().trim().min(1).max(60)
const cents = z.int().min(0).max(100_000)

const isTimeZone = (name: string): boolean => {
  try {
    new Intl.DateTimeFormat('en', { timeZone: name })
    return true
  } catch {
    return false
  }
}

export const declarationSchema = z.enum(['contains', 'may-contain', 'free', 'unknown'])

const ingredientSchema = z.strictObject({
  id,
  name: words,
  /** What the label says. An allergen that isn't named here is unknown. */
  declarations: z.partialRecord(z.enum(US_NINE), declarationSchema),
  /** null: nobody has read what it is made of, so no diet can be answered. */
  traits: z.array(z.enum(TRAITS)).nullable(),
  /** Civil date on which the label was read. */
  readOn: z.iso.date().nullable(),
})

const portionSchema = z.discriminatedUnion('tool', [
  z.strictObject({
    tool: z.literal('scoop'),
    number: z.int().min(4).max(100),
    level: z.int().min(1).max(4),
    gPerCup: z.number().min(5).max(500),
    source: z.string().min(3),
  }),
  z.strictObject({
    tool: z.literal('tongs'),
    grams: z.number().min(1).max(500),
    source: z.string().min(3),
  }),
  z.strictObject({ tool: z.literal('piece'), pieces: z.int().min(1).max(12) }),
  z.strictObject({ tool: z.literal('cup'), flOz: z.number().min(0.5).max(8) }),
])

const componentSchema = z.strictObject({
  id,
  name: words,
  /** How the name breaks on a narrow pan: one or two lines. */
  short: z.array(z.string().min(1).max(12)).min(1).max(2),
  ingredients: z.array(id).min(1),
  held: z.enum(['hot', 'cold', 'dry']),
  portion: portionSchema,
  /** Lidded cups exist for it, so a guest can have it on the side. */
  side: z.boolean(),
  /** What one more portion costs. */
  extraCents: cents,
  warm: z.strictObject({ seconds: z.int().min(1).max(600), on: words }).nullable(),
})

const itemSchema = z.strictObject({
  id,
  name: words,
  priceCents: cents,
  heart: id,
  base: z.strictObject({ choices: z.array(id).min(1), usual: id }).nullable(),
  parts: z
    .array(
      z.strictObject({
        component: id,
        usual: z.enum(['in', 'side', 'no']),
        /** It can't be left out. The heart never can. */
        required: z.boolean(),
      }),
    )
    .min(1),
})

const panSchema = z.strictObject({
  id,
  component: id,
  size: z.enum(['full', 'half', 'third', 'quarter', 'sixth', 'ninth']),
  depthIn: z.union([z.literal(2.5), z.literal(4), z.literal(6)]),
  /** What it is usually loaded with, in portions. */
  usualPortions: z.int().min(1).max(500),
})

const shape = z.strictObject({
  format: z.literal('level-scoop/station'),
  version: z.literal(1),
  id,
  name: words,
  line: z.strictObject({
    wells: z
      .array(
        z.strictObject({
          id,
          held: z.enum(['hot', 'cold', 'dry']),
          pans: z.array(panSchema).min(1),
        }),
      )
      .min(1),
  }),
  /** A name of the IANA time zone database. */
  timeZone: z.string().refine(isTimeZone, { error: 'is no known time zone' }),
  currency: z.string().regex(/^[A-Z]{3}$/),
  ingredients: z.array(ingredientSchema).min(1),
  components: z.array(componentSchema).min(1),
  items: z.array(itemSchema).min(1),
})

type Shape = z.infer<typeof shape>

const twice = (ids: readonly string[]): string | undefined =>
  ids.find((one, index) => ids.indexOf(one) !== index)

/** Allergens that come from what a diet leaves out, with the trait that says so. */
const TRAIT_OF: readonly (readonly [Allergen, Trait])[] = [
  ['milk', 'dairy'],
  ['egg', 'egg'],
  ['fish', 'fish'],
  ['shellfish', 'shellfish'],
]

/** Declarations and traits are read from one label: where they contradict, one of them is wrong. */
const contradictions = (document: Shape): string[] =>
  document.ingredients.flatMap(({ id: name, declarations, traits }) =>
    TRAIT_OF.flatMap(([allergen, trait]) => {
      if (traits === null) return []
      const has = traits.includes(trait)
      if (declarations[allergen] === 'contains' && !has)
        return [`${name} contains ${allergen}, but its traits don't name ${trait}`]
      // Molluscs are shellfish to a diet, and none of the crustaceans that the allergen means.
      return has && declarations[allergen] === 'free' && allergen !== 'shellfish'
        ? [`${name} is declared free of ${allergen}, but its traits name ${trait}`]
        : []
    }),
  )

/** Refusals and screens look names up by id alone. */
const ambiguous = (document: Shape): string[] => {
  const components = new Set(document.components.map((one) => one.id))
  const items = new Set(document.items.map((one) => one.id))
  const pans = document.line.wells.flatMap((well) => well.pans.map((pan) => pan.id))
  return [
    ...[...items].filter((one) => components.has(one)).map((one) => `item ${one} is a component`),
    ...pans
      .filter((one) => components.has(one))
      .map((one) => `pan ${one} is called as a component`),
    ...pans.filter((one) => items.has(one)).map((one) => `pan ${one} is called as an item`),
  ]
}

const dangling = (document: Shape): string[] => {
  const problems: string[] = []
  const ingredients = new Set(document.ingredients.map((one) => one.id))
  const components = new Set(document.components.map((one) => one.id))
  const pans = document.line.wells.flatMap((well) => well.pans)
  const onTheLine = new Set(pans.map((pan) => pan.component))
  for (const [what, ids] of [
    ['ingredient', document.ingredients.map((one) => one.id)],
    ['component', document.components.map((one) => one.id)],
    ['item', document.items.map((one) => one.id)],
    ['pan', pans.map((one) => one.id)],
    ['well', document.line.wells.map((one) => one.id)],
  ] as const) {
    const double = twice(ids)
    if (double !== undefined) problems.push(`two ${what}s are called ${double}`)
  }
  for (const component of document.components)
    for (const one of component.ingredients)
      if (!ingredients.has(one)) problems.push(`${component.id} has no known ingredient ${one}`)
  for (const pan of pans)
    if (!components.has(pan.component)) problems.push(`pan ${pan.id} holds no known component`)
  for (const well of document.line.wells)
    if (!fitsOneWell(well.pans.map((pan) => pan.size)))
      problems.push(`the pans of well ${well.id} don't fit into it`)
  for (const item of document.items) {
    const own = [...item.parts.map((part) => part.component), ...(item.base?.choices ?? [])]
    for (const one of own) {
      if (!components.has(one)) problems.push(`${item.id} has no known component ${one}`)
      else if (!onTheLine.has(one)) problems.push(`${item.id} takes ${one}, which has no pan`)
    }
    const double = twice(own)
    if (double !== undefined) problems.push(`${item.id} names ${double} twice`)
    if (!item.parts.some((part) => part.component === item.heart && part.usual !== 'no'))
      problems.push(`${item.id} does not take its heart ${item.heart}`)
    if (item.base && !item.base.choices.includes(item.base.usual))
      problems.push(`${item.id} has a usual base that can't be chosen`)
    for (const part of item.parts) {
      if (part.required && part.usual === 'no')
        problems.push(`${item.id} can't leave out ${part.component}, which it usually doesn't have`)
      if (
        part.usual === 'side' &&
        !document.components.find((one) => one.id === part.component)?.side
      )
        problems.push(`${item.id} puts ${part.component} on the side, but there are no cups for it`)
    }
  }
  return problems
}

/** Refuses a document whose parts don't know or contradict each other, in words that name the part. */
export const stationSchema = shape.superRefine((document, context) => {
  for (const message of [
    ...dangling(document),
    ...ambiguous(document),
    ...contradictions(document),
  ])
    context.addIssue({ code: 'custom', message })
})
