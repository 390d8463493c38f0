/**
 * Time and temperature limits as settings. The defaults are the model code's; local code and the
 * certified person in charge decide what holds in a kitchen.
 */
import { type Bound, keeps, type OnBothScales, type Temperature } from '#lib/safety/temperature.ts'

export const MINUTE_MS = 60_000
export const HOUR_MS = 3_600_000

/** Where a limit is written. `memory`: recalled, not read in a copy of the document. */
export interface Written {
  readonly document: string
  readonly paragraph: string
  readonly certainty: 'seen' | 'memory'
}

export interface TemperatureLimit extends Written {
  readonly bound: Bound
  readonly tenths: OnBothScales
}

/** No longer than so many milliseconds; the last millisecond still keeps it. */
export interface TimeLimit extends Written {
  readonly withinMs: number
}

/** So many days, the day of preparation being day 1. */
export interface DayLimit extends Written {
  readonly days: number
}

/** A temperature and the seconds for which all parts of the food are held at it; 0 is at once. */
export interface TimedTemperature {
  readonly tenths: OnBothScales
  readonly seconds: number
}

/** Any one of the combinations is enough; then it stands covered for so long. */
export interface HeatLimit extends Written {
  readonly combinations: readonly TimedTemperature[]
  readonly standSeconds: number
}

const FOOD_CODE = 'FDA Food Code 2022'

const written = (paragraph: string, certainty: Written['certainty'] = 'seen'): Written => ({
  document: FOOD_CODE,
  paragraph,
  certainty,
})

const degrees = (f: number, c: number): OnBothScales => ({ F: f * 10, C: c * 10 })

const atLeast = (f: number, c: number, where: Written): TemperatureLimit => ({
  bound: 'at-least',
  tenths: degrees(f, c),
  ...where,
})

const atMost = (f: number, c: number, where: Written): TemperatureLimit => ({
  bound: 'at-most',
  tenths: degrees(f, c),
  ...where,
})

const hours = (count: number, where: Written): TimeLimit => ({
  withinMs: count * HOUR_MS,
  ...where,
})

const heat = (
  where: Written,
  combinations: readonly (readonly [f: number, c: number, seconds: number])[],
  standSeconds = 0,
): HeatLimit => ({
  combinations: combinations.map(([f, c, seconds]) => ({ tenths: degrees(f, c), seconds })),
  standSeconds,
  ...where,
})

const GROUND: readonly (readonly [number, number, number])[] = [
  [155, 68, 17],
  [145, 63, 180],
  [150, 66, 60],
  [158, 70, 0],
]

/**
 * The model code's limits, each with its paragraph. Whole-muscle roasts are held to the limit of
 * fish and meat: the longer, cooler times of 3-401.11(B) are not here.
 */
export const MODEL_CODE = {
  cookFishOrMeat: heat(written('3-401.11(A)(1)'), [[145, 63, 15]]),
  cookEggsToOrder: heat(written('3-401.11(A)(1)'), [[145, 63, 15]]),
  cookEggsBatch: heat(written('3-401.11(A)(2)'), GROUND),
  cookGroundMeat: heat(written('3-401.11(A)(2)'), GROUND),
  cookPoultryOrStuffed: heat(written('3-401.11(A)(3)'), [[165, 74, 0]]),
  cookMicrowave: heat(written('3-401.12'), [[165, 74, 0]], 120),
  cookPlant: heat(written('3-401.13', 'memory'), [[135, 57, 0]]),
  firstHeating: { withinMs: HOUR_MS, ...written('3-401.14', 'memory') },

  reheat: heat(written('3-403.11(A)'), [[165, 74, 15]]),
  reheatMicrowave: heat(written('3-403.11(B)'), [[165, 74, 0]], 120),
  reheatCommercialPack: heat(written('3-403.11(C)'), [[135, 57, 0]]),
  reheatWithin: hours(2, written('3-403.11(D)')),

  hotHolding: atLeast(135, 57, written('3-501.16(A)(1)')),
  hotHoldingRoast: atLeast(130, 54, written('3-501.16(A)(1)')),
  coldHolding: atMost(41, 5, written('3-501.16(A)(2)')),
  shellEggAir: atMost(45, 7, written('3-501.16(B)')),

  coolingFrom: atLeast(135, 57, written('3-501.14(A)(1)')),
  coolingFirstTo: atMost(70, 21, written('3-501.14(A)(1)')),
  coolingFirstWithin: hours(2, written('3-501.14(A)(1)')),
  coolingTo: atMost(41, 5, written('3-501.14(A)(2)')),
  coolingWithin: hours(6, written('3-501.14(A)(2)')),
  coolingFromRoomWithin: hours(4, written('3-501.14(B)')),

  timeOnly4h: hours(4, written('3-501.19(B)')),
  timeOnlyStartCold: atMost(41, 5, written('3-501.19(B)')),
  timeOnlyStartHot: atLeast(135, 57, written('3-501.19(B)')),
  timeOnlyStartRoom: atMost(70, 21, written('3-501.19(B)')),
  timeOnly6h: hours(6, written('3-501.19(C)')),
  timeOnlyWarmest: atMost(70, 21, written('3-501.19(C)')),

  dateMark: { days: 7, ...written('3-501.17(A)') },
  dateMarkCold: atMost(41, 5, written('3-501.17(A)')),
  dateMarkAfter: hours(24, written('3-501.17(A)')),

  receivedCold: atMost(41, 5, written('3-202.11(A)', 'memory')),
  // What the laws on milk and on molluscan shellfish allow as they are delivered.
  receivedByItsLaw: atMost(45, 7, written('3-202.11(B)', 'memory')),
  receivedEggAir: atMost(45, 7, written('3-202.11(C)', 'memory')),
  receivedHot: atLeast(135, 57, written('3-202.11(D)', 'memory')),
  receivedCooledWithin: hours(4, written('3-501.14(C)', 'memory')),
} as const satisfies Readonly<Record<string, HeatLimit | TemperatureLimit | TimeLimit | DayLimit>>

export type LimitName = keyof typeof MODEL_CODE

type Setting<L> = L extends HeatLimit
  ? HeatLimit
  : L extends TemperatureLimit
    ? TemperatureLimit
    : L extends TimeLimit
      ? TimeLimit
      : DayLimit

/** Every limit that holds in a kitchen. */
export type SafetyLimits = {
  readonly [N in LimitName]: Setting<(typeof MODEL_CODE)[N]>
}

/** What local code says instead, each with its own document and paragraph. */
export type LocalVariant = Partial<SafetyLimits>

/** The model code with a local variant over it. */
export const limitsWith = (variant: LocalVariant): SafetyLimits => ({ ...MODEL_CODE, ...variant })

/** Whether a temperature keeps a limit; as `keeps`. */
export const meets = (temperature: Temperature, limit: TemperatureLimit): boolean =>
  keeps(temperature, limit.bound, limit.tenths)
