/** A limit of local code while it is typed: what it begins from, its figures on both scales, what it is. */
import type { Json, Row } from '#lib/editor/draft.ts'
import { type LimitName, MODEL_CODE } from '#lib/safety/limits.ts'
import { besideModel, type Limit } from '#lib/safety/local-variants.ts'
import type { Bound, OnBothScales, Scale } from '#lib/safety/temperature.ts'
import { limitVariantSchema } from '#lib/station/shapes/limit-schema.ts'

/** Every limit, in the order of a batch: made, heated again, held, cooled, on a clock, dated; then as it is delivered. */
export const LIMIT_GROUPS = {
  cooking: [
    'cookPoultryOrStuffed',
    'cookGroundMeat',
    'cookFishOrMeat',
    'cookEggsBatch',
    'cookEggsToOrder',
    'cookMicrowave',
    'cookPlant',
    'firstHeating',
  ],
  reheating: ['reheat', 'reheatMicrowave', 'reheatCommercialPack', 'reheatWithin'],
  holding: ['hotHolding', 'hotHoldingRoast', 'coldHolding', 'shellEggAir'],
  cooling: [
    'coolingFrom',
    'coolingFirstTo',
    'coolingFirstWithin',
    'coolingTo',
    'coolingWithin',
    'coolingFromRoomWithin',
  ],
  clock: [
    'timeOnly4h',
    'timeOnlyStartHot',
    'timeOnlyStartCold',
    'timeOnlyStartRoom',
    'timeOnly6h',
    'timeOnlyWarmest',
  ],
  dates: ['dateMark', 'dateMarkCold', 'dateMarkAfter'],
  receiving: [
    'receivedCold',
    'receivedByItsLaw',
    'receivedEggAir',
    'receivedHot',
    'receivedCooledWithin',
  ],
} as const satisfies Readonly<Record<string, readonly LimitName[]>>

export type LimitGroup = keyof typeof LIMIT_GROUPS

/** The model code's figures to change, without its source: whose they are is said anew. */
export const begunLimit = (name: LimitName): Row => {
  const { document: _, paragraph: __, certainty: ___, ...figures } = MODEL_CODE[name]
  return JSON.parse(JSON.stringify(figures)) as Row
}

const converted = (tenths: number, scale: Scale, bound: Bound): number => {
  const exact = scale === 'F' ? ((tenths - 320) * 5) / 9 : (tenths * 9) / 5 + 320
  return bound === 'at-least' ? Math.ceil(exact) : Math.floor(exact)
}

/**
 * A figure on both scales as a limit keeps it, in whole tenths. The model code rounds its own pairs
 * (135 °F / 57 °C), so one of those stays the pair it is; any other is converted, rounded to what
 * asks more, and never asks less on the other scale than a pair of the model's that it keeps.
 *
 * @param degrees as typed, on `scale`
 * @param pairs the model code's figures of this limit
 */
export const onBothScales = (
  degrees: number,
  scale: Scale,
  bound: Bound,
  pairs: readonly OnBothScales[],
): OnBothScales => {
  const tenths = Math.round(degrees * 10)
  const same = pairs.find((pair) => pair[scale] === tenths)
  if (same) return same
  const other = scale === 'F' ? 'C' : 'F'
  const kept = pairs.filter((pair) =>
    bound === 'at-least' ? tenths >= pair[scale] : tenths <= pair[scale],
  )
  const all = [converted(tenths, scale, bound), ...kept.map((pair) => pair[other])]
  const far = bound === 'at-least' ? Math.max(...all) : Math.min(...all)
  return scale === 'F' ? { F: tenths, C: far } : { F: far, C: tenths }
}

/** The model code's figures of a limit that has any, and on which side of them food is to be. */
export const modelFigures = (
  name: LimitName,
): { readonly bound: Bound; readonly pairs: readonly OnBothScales[] } => {
  const model: Limit = MODEL_CODE[name]
  if ('bound' in model) return { bound: model.bound, pairs: [model.tenths] }
  if ('combinations' in model)
    return { bound: 'at-least', pairs: model.combinations.map((one) => one.tenths) }
  return { bound: 'at-least', pairs: [] }
}

/** Who says so doesn't change what it asks: told also before that is typed. */
const SOMEBODY = { document: 'not yet', paragraph: 'not yet', certainty: 'memory' }

/** What a typed limit asks beside the model code's; null while its figures can't be read. */
export const typedBesideModel = (
  name: LimitName,
  typed: Json | undefined,
): ReturnType<typeof besideModel> | null => {
  if (typeof typed !== 'object' || typed === null) return null
  const parsed = limitVariantSchema.safeParse({ [name]: { ...typed, ...SOMEBODY } })
  const own = parsed.success ? parsed.data[name] : undefined
  return own === undefined ? null : besideModel(name, own)
}
