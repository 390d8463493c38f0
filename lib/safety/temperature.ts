export const SCALES = ['F', 'C'] as const

export type Scale = (typeof SCALES)[number]

/** A temperature as it was read: whole tenths of a degree on the scale of the thermometer. */
export interface Temperature {
  readonly tenths: number
  readonly scale: Scale
}

/** One limit as the model code prints it on both scales, in tenths: 135 °F is 1350, 57 °C is 570. */
export interface OnBothScales {
  readonly F: number
  readonly C: number
}

export type Bound = 'at-least' | 'at-most'

/** Absolute zero in tenths; nothing is colder. */
const COLDEST: Readonly<Record<Scale, number>> = { F: -4596, C: -2731 }
const HOTTEST_TENTHS = 20_000

/** Whether it is whole tenths of a degree that a thermometer could show at all. */
export const isTemperature = ({ tenths, scale }: Temperature): boolean =>
  Number.isInteger(tenths) && tenths >= COLDEST[scale] && tenths <= HOTTEST_TENTHS

function assertTemperature(temperature: Temperature): void {
  if (!isTemperature(temperature))
    throw new RangeError('a temperature is whole tenths of a degree, not below absolute zero')
}

/**
 * Whether a reading keeps a limit, compared in whole tenths on the reading's own scale with the
 * figure that the limit has on that scale, so that nothing is converted: 57.0 °C keeps 135 °F / 57 °C
 * though it is 134.6 °F. Throws RangeError for what is no temperature.
 */
export const keeps = (temperature: Temperature, bound: Bound, limit: OnBothScales): boolean => {
  assertTemperature(temperature)
  const figure = limit[temperature.scale]
  return bound === 'at-least' ? temperature.tenths >= figure : temperature.tenths <= figure
}

/** Ninetieths of a degree Celsius, a whole number on either scale, so that comparing never rounds. */
const ninetieths = ({ tenths, scale }: Temperature): number =>
  scale === 'C' ? tenths * 9 : (tenths - 320) * 5

/**
 * Below zero where the first is colder, above where it is warmer, 0 where equal; the scales may
 * differ, the comparison is exact. Throws RangeError for what is no temperature.
 */
export const compareTemperatures = (one: Temperature, other: Temperature): number => {
  assertTemperature(one)
  assertTemperature(other)
  return ninetieths(one) - ninetieths(other)
}

export const otherScale = (scale: Scale): Scale => (scale === 'F' ? 'C' : 'F')
