/** How a reading is said, small enough for every screen. */
import type { Temperature } from '#lib/safety/temperature.ts'

/** "142 °F", "57.5 °C" */
export const sayDegrees = ({ tenths, scale }: Temperature): string =>
  `${tenths % 10 === 0 ? tenths / 10 : (tenths / 10).toFixed(1)} °${scale}`
