/** How a reading is said and recorded, small enough for every screen. */
import type { Temperature } from '#lib/safety/temperature.ts'

/** "142 °F", "57.5 °C" */
export const sayDegrees = ({ tenths, scale }: Temperature): string =>
  `${tenths % 10 === 0 ? tenths / 10 : (tenths / 10).toFixed(1)} °${scale}`

/** "Record 151 °F", on the button; null before all of it is typed. */
export const record = (read: string | null): string =>
  read === null ? 'Record it' : `Record ${read}`
