/** Strength of a sanitizing solution for surfaces, cloths and probes, as a strip and a thermometer tell. */
import type { Written } from '#lib/safety/limits.ts'
import { keeps, type OnBothScales, type Temperature } from '#lib/safety/temperature.ts'

export const SANITIZERS = ['chlorine', 'iodine', 'quaternary-ammonium'] as const

export type Sanitizer = (typeof SANITIZERS)[number]

/** What its registered label directs, where somebody read it; mg/L, above 0. */
export interface SanitizerLabel {
  readonly leastMgPerL: number
  readonly mostMgPerL: number
  /** Up to which pH it may be used; null: the label doesn't say. */
  readonly mostPh: number | null
}

export interface SanitizerReading {
  readonly kind: Sanitizer
  /** Of the strip, mg/L (parts per million), 0 or above. */
  readonly mgPerL: number
  /** Of the solution; null: not read, which passes nothing. */
  readonly water: Temperature | null
  /** 0 to 14; null: not read, so that the stricter row holds. */
  readonly ph: number | null
}

export type SanitizerProblem =
  | 'water-not-read'
  | 'water-too-cold'
  | 'too-weak'
  | 'too-strong'
  | 'ph-not-read'
  | 'ph-too-high'
  | 'label-not-read'

interface ChlorineRow {
  readonly leastMgPerL: number
  readonly mostPh: number
  readonly water: OnBothScales
}

const degrees = (f: number, c: number): OnBothScales => ({ F: f * 10, C: c * 10 })

/** Each is enough by itself: so strong, at that pH or lower, in water at least so warm. */
const CHLORINE: readonly ChlorineRow[] = [
  { leastMgPerL: 25, mostPh: 10, water: degrees(120, 49) },
  { leastMgPerL: 50, mostPh: 10, water: degrees(100, 38) },
  { leastMgPerL: 50, mostPh: 8, water: degrees(75, 24) },
  { leastMgPerL: 100, mostPh: 10, water: degrees(55, 13) },
]

const LEAST_CHLORINE = 25
const MOST_CHLORINE_PH = 10

/** 21 CFR 178.1010(c)(1), from memory: more isn't left on a surface without a rinse. */
const MOST_CHLORINE = 200

const IODINE = { least: 12.5, most: 25, mostPh: 5, water: degrees(68, 20) } as const

const QUATERNARY_WATER = degrees(75, 24)

/** Where the limits are written. */
export const SANITIZER_LIMITS: Written = {
  document: 'FDA Food Code 2022',
  paragraph: '4-501.114(A), (B), (C)',
  certainty: 'seen',
}

type Read = SanitizerReading & { readonly water: Temperature }

const strength = (mgPerL: number, least: number, most: number): SanitizerProblem | null => {
  if (mgPerL < least) return 'too-weak'
  return mgPerL > most ? 'too-strong' : null
}

const warmth = (water: Temperature, limit: OnBothScales): SanitizerProblem | null =>
  keeps(water, 'at-least', limit) ? null : 'water-too-cold'

const ofChlorine = ({ mgPerL, ph, water }: Read, label: SanitizerLabel | null) => {
  const least = Math.max(LEAST_CHLORINE, label?.leastMgPerL ?? 0)
  const wrong = strength(mgPerL, least, label?.mostMgPerL ?? MOST_CHLORINE)
  if (wrong) return wrong
  const mostPh = Math.min(MOST_CHLORINE_PH, label?.mostPh ?? MOST_CHLORINE_PH)
  if (ph === null && mostPh < MOST_CHLORINE_PH) return 'ph-not-read'
  // Nobody read it: it may be the highest that is allowed.
  const known = ph ?? MOST_CHLORINE_PH
  if (known > mostPh) return 'ph-too-high'
  const rows = CHLORINE.filter((row) => mgPerL >= row.leastMgPerL && known <= row.mostPh)
  return rows.some((row) => keeps(water, 'at-least', row.water)) ? null : 'water-too-cold'
}

const ofIodine = ({ mgPerL, ph, water }: Read, label: SanitizerLabel | null) => {
  const wrong = strength(
    mgPerL,
    label?.leastMgPerL ?? IODINE.least,
    label?.mostMgPerL ?? IODINE.most,
  )
  if (wrong) return wrong
  if (ph === null) return 'ph-not-read'
  return ph > (label?.mostPh ?? IODINE.mostPh) ? 'ph-too-high' : warmth(water, IODINE.water)
}

/** No strength of it is written in the code: its label directs, also which hardness of water it bears. */
const ofQuaternary = ({ mgPerL, ph, water }: Read, label: SanitizerLabel | null) => {
  if (!label) return 'label-not-read'
  const wrong = strength(mgPerL, label.leastMgPerL, label.mostMgPerL)
  if (wrong) return wrong
  if (label.mostPh !== null && ph === null) return 'ph-not-read'
  return label.mostPh !== null && ph !== null && ph > label.mostPh
    ? 'ph-too-high'
    : warmth(water, QUATERNARY_WATER)
}

const PROBLEMS: Readonly<
  Record<Sanitizer, (reading: Read, label: SanitizerLabel | null) => SanitizerProblem | null>
> = { chlorine: ofChlorine, iodine: ofIodine, 'quaternary-ammonium': ofQuaternary }

/**
 * What is wrong with a solution; null where its limit is kept. A strength without the temperature of
 * the water passes nothing; a chlorine solution of unknown pH takes the row for the higher pH; one of
 * quaternary ammonium passes only by its label. FDA Food Code 2022, 4-501.114.
 * @throws RangeError for a strength below 0, a pH that is none, or what is no temperature
 */
export const sanitizerProblem = (
  reading: SanitizerReading,
  label: SanitizerLabel | null,
): SanitizerProblem | null => {
  const { kind, mgPerL, water, ph } = reading
  if (!(mgPerL >= 0)) throw new RangeError('a strength is 0 mg/L or above')
  if (ph !== null && !(ph >= 0 && ph <= 14)) throw new RangeError('a pH is 0 to 14')
  return water === null ? 'water-not-read' : PROBLEMS[kind]({ ...reading, water }, label)
}
