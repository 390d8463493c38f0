import {
  compareTemperatures,
  isTemperature,
  otherScale,
  type Scale,
  type Temperature,
} from '#lib/safety/temperature.ts'

/** Where the probe was. A surface reading tells nothing about the middle. */
export type ProbeAt = 'middle-stirred' | 'thickest-part' | 'surface'

/** One reading of a food. Whose initials it carries is kept apart; here only that it has them. */
export interface Reading {
  readonly temperature: Temperature
  /** Epoch milliseconds. */
  readonly at: number
  readonly probe: string | null
  readonly where: ProbeAt
  readonly initialled: boolean
  /**
   * Whether the probe was washed, rinsed and sanitized since the food before; left away: nobody said,
   * and then it counts as not.
   */
  readonly cleaned?: boolean
}

export type ReadingLack = 'no-probe' | 'surface-only' | 'not-initialled' | 'no-temperature'

/** What a reading lacks, so that it can't count; null where it counts. */
export const readingLacks = (reading: Reading): ReadingLack | null => {
  if (!isTemperature(reading.temperature)) return 'no-temperature'
  if (reading.probe === null || reading.probe.trim() === '') return 'no-probe'
  if (reading.where === 'surface') return 'surface-only'
  return reading.initialled ? null : 'not-initialled'
}

/** The readings that count, oldest first. What doesn't count is as good as missing. */
export const thatCount = <R extends Reading>(readings: readonly R[]): readonly R[] =>
  readings.filter((one) => readingLacks(one) === null).sort((one, other) => one.at - other.at)

export const READING_CONTEXTS = [
  'cooking',
  'hot-holding',
  'cold-holding',
  'cooling',
  'reheating',
  'time-start',
] as const

export type ReadingContext = (typeof READING_CONTEXTS)[number]

type Range = readonly [least: number, most: number]

interface Plausible {
  /** Tenths °F between which a wet food can be at all. */
  readonly possible: Range
  /** Tenths °F that one expects to read here. */
  readonly usual: readonly Range[]
}

const WET: Range = [140, 2300]

/**
 * What a thermometer plausibly shows by context, tenths °F. Common practice, no source: food with
 * water in it doesn't pass its boiling point by much; these only raise a question and are no limits.
 */
const PLAUSIBLE: Readonly<Record<ReadingContext, Plausible>> = {
  cooking: { possible: WET, usual: [[1300, 2120]] },
  'hot-holding': { possible: WET, usual: [[1000, 2120]] },
  'cold-holding': { possible: [-200, 1600], usual: [[280, 700]] },
  cooling: { possible: WET, usual: [[280, 2120]] },
  reheating: { possible: WET, usual: [[1000, 2120]] },
  'time-start': {
    possible: WET,
    usual: [
      [280, 700],
      [1000, 2120],
    ],
  },
}

const within = (temperature: Temperature, [least, most]: Range): boolean =>
  compareTemperatures(temperature, { tenths: least, scale: 'F' }) >= 0 &&
  compareTemperatures(temperature, { tenths: most, scale: 'F' }) <= 0

export type ReadingQuestion =
  /** The same figure fits on the other scale. `must`: as it stands it can't be, and isn't taken. */
  | { readonly code: 'did-you-mean'; readonly scale: Scale; readonly must: boolean }
  | { readonly code: 'cannot-be' }

/**
 * What to ask about a reading before it is taken, or null. It is asked where the figure can't be or
 * is unusual here and would be usual on the other scale, and where it isn't on the scale that this
 * kitchen uses though it would be usual on that. A pan that really fell is unusual and may be
 * confirmed; what can't be is refused.
 */
export const questionReading = (
  temperature: Temperature,
  context: ReadingContext,
  kitchenScale: Scale,
): ReadingQuestion | null => {
  if (!isTemperature(temperature)) return { code: 'cannot-be' }
  const { possible, usual } = PLAUSIBLE[context]
  const isUsual = (one: Temperature) => usual.some((range) => within(one, range))
  const meant = { tenths: temperature.tenths, scale: otherScale(temperature.scale) }
  const fitsOther = isTemperature(meant) && isUsual(meant)
  if (!within(temperature, possible))
    return fitsOther
      ? { code: 'did-you-mean', scale: meant.scale, must: true }
      : { code: 'cannot-be' }
  const strange = !isUsual(temperature) || temperature.scale !== kitchenScale
  return fitsOther && strange ? { code: 'did-you-mean', scale: meant.scale, must: false } : null
}

export type MomentProblem =
  | { readonly code: 'clock-back'; readonly byMs: number }
  | { readonly code: 'in-the-future'; readonly byMs: number }

/**
 * Whether a moment told by somebody can stand after what is recorded: not before the newest record
 * of the same food (the clock jumped back), not after now. All epoch milliseconds.
 */
export const momentProblem = (
  at: number,
  newestRecorded: number | null,
  now: number,
): MomentProblem | null => {
  if (newestRecorded !== null && now < newestRecorded)
    return { code: 'clock-back', byMs: newestRecorded - now }
  if (newestRecorded !== null && at < newestRecorded)
    return { code: 'clock-back', byMs: newestRecorded - at }
  return at > now ? { code: 'in-the-future', byMs: at - now } : null
}
