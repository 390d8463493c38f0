/** The shape of a station document. What its parts say of each other is checked beside it. */
import { z } from 'zod'
import { MOST_STEP, MOST_STEPS } from '#lib/recipes/sheet/typed-steps.ts'
import { ALLERGEN_SET_IDS } from '#lib/station/codes/allergen-sets.ts'
import { ingredientSchema } from '#lib/station/shapes/label-schema.ts'
import { idSchema as id, plural, words } from '#lib/station/shapes/named-schema.ts'
import {
  UNSAID_DAY,
  UNSAID_FOOD,
  UNSAID_HOUSE,
  UNSAID_SAFETY,
} from '#lib/station/shapes/older-documents.ts'
import { portionSchema } from '#lib/station/shapes/portion-schema.ts'
import {
  daySchema,
  foodSchema,
  remakeSchema,
  safetySchema,
  toolSchema,
} from '#lib/station/shapes/station-day-schema.ts'

const cents = z.int().min(0).max(100_000)
const milligrams = z.int().min(0).max(50_000_000)

/** As long as an id and what an upgrade puts before it. */
const backupId = z.string().regex(/^[a-z][a-z0-9-]{0,49}$/)

const isTimeZone = (name: string): boolean => {
  try {
    new Intl.DateTimeFormat('en', { timeZone: name })
    return true
  } catch {
    return false
  }
}

/** As on the card: "2 #10 cans", "to taste", "serves 24". */
const typed = z.string().trim().min(1).max(60)

/** Amounts of what it is made of, as they were typed; of one ingredient on several lines too. */
const lines = z
  .array(z.strictObject({ of: id, typed }))
  .max(100)
  .optional()

/** How a batch of something is made. */
const recipeSchema = z.strictObject({
  id,
  name: words,
  ingredients: z.array(id),
  /** Recipes that go into it. */
  recipes: z.array(id),
  lines,
  yields: typed.optional(),
  /** The pot, griddle or oven that it is made in. */
  vessel: id.optional(),
  /** How it is made: short sentences in their order. */
  steps: z.array(z.string().trim().min(1).max(MOST_STEP)).max(MOST_STEPS).optional(),
})

/** A pot, a griddle or an oven, and what goes into it at once: "20 qt", "4 full pans, 2 1/2 in". */
const vesselSchema = z.strictObject({ id, name: words, holds: typed })

/** What a millilitre of it weighs, and how that is known. */
const densitySchema = z.strictObject({
  gPerMl: z.number().min(0.02).max(2.5),
  by: z.enum(['measured', 'pan', 'table']),
  /** The table. */
  source: z.string().trim().min(1).max(120).optional(),
  /** What was measured, as "10 scoops weigh 1 lb 4 oz". */
  typed: typed.optional(),
})

export const CONTACT_KINDS = [
  'scoop',
  'board',
  'griddle',
  'press',
  'toaster',
  'fryer',
  'warmer',
  'beside',
  'reached-over',
] as const

/** Components that touch the same thing, or one another. */
const contactSchema = z.strictObject({
  id,
  kind: z.enum(CONTACT_KINDS),
  components: z.array(id).min(2),
})

const panSizes = z.enum(['full', 'half', 'third', 'quarter', 'sixth', 'ninth'])
const panDepths = z.union([z.literal(2.5), z.literal(4), z.literal(6)])

/** A pan kept behind; protected: lidded, with a scoop of its own, not reached over. */
const backupSchema = z.strictObject({
  id: backupId,
  component: id,
  protected: z.boolean(),
  size: panSizes,
  depthIn: panDepths,
  tareMg: milligrams.nullable().default(null),
  kept: z.enum(['hot', 'cold', 'boxed']),
})

const componentSchema = z.strictObject({
  id,
  name: words,
  plural,
  /** How the name breaks on a narrow pan: one or two lines. */
  short: z.array(z.string().min(1).max(12)).min(1).max(2),
  /** What is written of it on a wrap by hand, "slaw"; left away: its short name. */
  mark: z.string().min(1).max(10).optional(),
  ingredients: z.array(id),
  recipes: z.array(id),
  lines,
  held: z.enum(['hot', 'cold', 'dry']),
  portion: portionSchema,
  density: densitySchema.optional(),
  /** Lidded cups exist for it, so a guest can have it on the side. */
  side: z.boolean(),
  /** What one more portion costs. */
  extraCents: cents,
  warm: z.strictObject({ seconds: z.int().min(1).max(600), on: words }).nullable(),
  food: foodSchema.default(UNSAID_FOOD),
  /** How it is made again during a service; null: it can't be. */
  remake: remakeSchema.nullable().default(null),
  /** What a portion costs the station, for advice; null where nobody said. */
  costCents: cents.nullable().default(null),
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
  size: panSizes,
  depthIn: panDepths,
  /** What the empty pan weighs; null where nobody weighed it. */
  tareMg: milligrams.nullable().default(null),
  /** The station's own usable capacity instead of the table's. */
  capacityFlOz: z.number().min(1).max(2_000).nullable().default(null),
  /** What it is usually loaded with, in portions. */
  usualPortions: z.int().min(1).max(500),
})

/** English as it is written somewhere; another language comes with its words. */
const LOCALES = ['en-US', 'en-CA', 'en-GB', 'en-IE', 'en-AU', 'en-NZ'] as const

const taxSchema = z.strictObject({
  /** Prices are what a guest pays. */
  inPrices: z.boolean(),
  /** 825 is 8.25%; null where nobody said. */
  rateBasisPoints: z.int().min(0).max(10_000).nullable(),
})

export const stationShape = z.strictObject({
  format: z.literal('level-scoop/station'),
  version: z.literal(4),
  /** Made up to try the tool with: its labels are nobody's. */
  invented: z.boolean().default(false),
  id,
  name: words,
  line: z.strictObject({
    wells: z
      .array(
        z.strictObject({
          id,
          /** `time`: neither hot nor cold, so that time alone controls what stands in it. */
          held: z.enum(['hot', 'cold', 'dry', 'time']),
          pans: z.array(panSchema).min(1),
        }),
      )
      .min(1),
  }),
  /** A name of the IANA time zone database. */
  timeZone: z.string().refine(isTimeZone, { error: 'is no known time zone' }),
  currency: z.string().regex(/^[A-Z]{3}$/),
  allergenSet: z.enum(ALLERGEN_SET_IDS),
  /** Allergens that the station adds; said as they are spelled, hyphens as spaces. */
  ownAllergens: z.array(id),
  /** Whether the person in charge may accept a caution with the guest, or it rules out. */
  cautions: z.enum(['ask', 'block']),
  /** What an allergen is that no label lists, where its law makes them name it. */
  notListed: z.enum(['fits', 'caution']).default(UNSAID_HOUSE.notListed),
  /** A label that was read more days ago isn't known any more: common practice, no source. */
  readAgainDays: z.int().min(1).max(730).default(UNSAID_HOUSE.readAgainDays),
  /** How numbers, times and money are written. */
  locale: z.enum(LOCALES).default(UNSAID_HOUSE.locale),
  tax: taxSchema.default(UNSAID_HOUSE.tax),
  ingredients: z.array(ingredientSchema).min(1),
  recipes: z.array(recipeSchema),
  components: z.array(componentSchema).min(1),
  items: z.array(itemSchema).min(1),
  /** null: nobody has said what touches what, so nothing is kept apart from anything. */
  contacts: z.array(contactSchema).nullable(),
  backups: z.array(backupSchema),
  safety: safetySchema.default(UNSAID_SAFETY),
  day: daySchema.default(UNSAID_DAY),
  /** Portion tools at hand, for when one is missing. */
  tools: z.array(toolSchema).default([]),
  vessels: z.array(vesselSchema).max(30).optional(),
})

export type StationShape = z.infer<typeof stationShape>
