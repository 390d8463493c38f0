import { mlFrom, VOLUME_ML } from '#lib/measure/kitchen-units.ts'

export type ScoopColour =
  | 'white'
  | 'gray'
  | 'ivory'
  | 'green'
  | 'blue'
  | 'yellow'
  | 'red'
  | 'black'
  | 'purple'
  | 'terracotta'
  | 'pink'
  | 'plum'
  | 'orange'

export type ScoopHandle = {
  readonly number: number
  readonly colour: ScoopColour
  /** CSS custom property that holds the colour. */
  readonly token: `--scoop-${ScoopColour}`
  /** Reads as purple, which kitchens also use for allergen-only tools. */
  readonly purplish: boolean
}

const handle = (number: number, colour: ScoopColour): ScoopHandle => ({
  number,
  colour,
  token: `--scoop-${colour}`,
  purplish: colour === 'purple' || colour === 'plum',
})

/**
 * Handle colours as the trade sells them (a retailer's disher chart and a kitchen tool seller's
 * table). Custom only, no standard; makers differ, so the number always stands beside a colour.
 */
export const SCOOP_HANDLES: readonly ScoopHandle[] = [
  handle(6, 'white'),
  handle(8, 'gray'),
  handle(10, 'ivory'),
  handle(12, 'green'),
  handle(16, 'blue'),
  handle(20, 'yellow'),
  handle(24, 'red'),
  handle(30, 'black'),
  handle(40, 'purple'),
  handle(50, 'terracotta'),
  handle(60, 'pink'),
  handle(70, 'plum'),
  handle(100, 'orange'),
]

/** Sizes stamped "oz" on ladles and portion servers, all fluid ounces: ICN Basics at a Glance. */
export const LADLE_FL_OZ = [1, 2, 3, 4, 6, 8, 12] as const

export const SCOOP_NUMBER_MIN = 4
export const SCOOP_NUMBER_MAX = 100

/**
 * Millilitres of one level scoop: a US liquid quart shared by the scoop's number (ICN Basics at a
 * Glance, footnote to its scoop table). Whole numbers 4 to 100; throws RangeError otherwise.
 */
export function scoopVolumeMl(number: number): number {
  if (!Number.isInteger(number) || number < SCOOP_NUMBER_MIN || number > SCOOP_NUMBER_MAX) {
    throw new RangeError('a scoop number is a whole number from 4 to 100')
  }
  return VOLUME_ML.quart / number
}

/** The trade's handle for a scoop number, or null where no colour is known. */
export function scoopHandle(number: number): ScoopHandle | null {
  return SCOOP_HANDLES.find((one) => one.number === number) ?? null
}

/** Millilitres of one level ladle by its stamped size; throws RangeError on sizes not sold. */
export function ladleVolumeMl(flOz: number): number {
  if (!LADLE_FL_OZ.some((size) => size === flOz)) {
    throw new RangeError('a ladle holds 1, 2, 3, 4, 6, 8 or 12 fl oz')
  }
  return mlFrom(flOz, 'flOz')
}
