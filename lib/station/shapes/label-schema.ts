/** The shape of an ingredient: what it is called, its products, and what their labels say. */
import { z } from 'zod'
import { ALLERGEN_SET_IDS } from '#lib/station/codes/allergen-sets.ts'
import { CLAIMS, SOURCED, SOURCES, TRAITS } from '#lib/station/codes/diets.ts'
import { LIES } from '#lib/station/codes/lies.ts'
import { idSchema, plural, words } from '#lib/station/shapes/named-schema.ts'

/**
 * `free` needs printed words or the maker's letter; `not-listed`: the whole list was read, and it
 * names none; `unknown`: it doesn't say. An allergen that is left away has no answer, which is unknown.
 */
export const declarationSchema = z.enum([
  'contains',
  'may-contain',
  'free',
  'not-listed',
  'unknown',
])

/** SHA-256 of a kept picture, in lower-case hexadecimal. */
const pictureHash = z.string().regex(/^[0-9a-f]{64}$/)

/** What a label says, and when it was read by whom. */
export const labelSchema = z.strictObject({
  /** By allergen, kind, `gluten` or grain. What isn't named here is unknown. */
  declarations: z.record(idSchema, declarationSchema),
  /** null: nobody has read what it is made of, so no diet can be answered. */
  traits: z.array(z.enum(TRAITS)).nullable(),
  /** What traits come of, as the label names it; not said where it is empty or left away. */
  sources: z.partialRecord(z.enum(SOURCED), z.array(z.enum(SOURCES))).optional(),
  /** It says beside "wheat" that the wheat was processed to be gluten-free: 21 CFR 101.91(b)(3). */
  glutenStatement: z.literal(true).optional(),
  /** Declared by a certificate or the label; what isn't here is unknown, never inferred. */
  claims: z.partialRecord(z.enum(CLAIMS), z.enum(['declared', 'not'])),
  /** What *declared free* stands on: words of the package, or its maker's letter; not said where it is left away. */
  freeBy: z.enum(['printed', 'letter']).optional(),
  /** The allergens that the law of its pack makes it name; not known where it is left away. */
  law: z.enum(ALLERGEN_SET_IDS).optional(),
  /** It is one plain food, as a pepper: there is no list to read. */
  plain: z.literal(true).optional(),
  /** The words of its ingredient list, as they were typed or pasted. */
  list: z.string().min(1).max(4_000).optional(),
  /** The picture that is kept with it. */
  photo: pictureHash.optional(),
  /** Civil date on which the label was read; null: nobody has. */
  readOn: z.iso.date().nullable(),
  /** Who read it, as a role or initials; null where that wasn't kept. */
  readBy: words.nullable(),
})

/** Who makes it, and the pack that it comes in. */
const product = { maker: words.optional(), pack: words.optional() }

/** A line of an invoice: what was paid for so many packs, and what one of them holds, as typed. */
const invoiceSchema = z.strictObject({
  date: z.iso.date(),
  packs: z.int().min(1).max(1_000),
  packTyped: words,
  /** For all of the packs; 0 is what a gift costs, and no price to reckon with. */
  cents: z.int().min(0).max(10_000_000),
})

const isHundredth = (percent: number): boolean => Number(percent.toFixed(2)) === percent

/** The label of an ingredient is that of the product in use; substitutes have their own. */
export const ingredientSchema = z.strictObject({
  id: idSchema,
  name: words,
  plural,
  ...product,
  /** Substitutes that come instead, each read before it is used. */
  products: z
    .array(z.strictObject({ id: idSchema, ...product, ...labelSchema.shape }))
    .max(40)
    .optional(),
  /** What is eaten of it as it is bought, percent to the hundredth; all of it where it is left away. */
  edible: z.number().min(1).max(100).refine(isHundredth).optional(),
  invoices: z.array(invoiceSchema).max(24).optional(),
  /** Where it lies; left away: nobody said. */
  lies: z.enum(LIES).optional(),
  ...labelSchema.shape,
})
