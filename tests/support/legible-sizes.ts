/** What a letter of some size fills of the eye's field, and how large it must be. */

/** Cap height of Atkinson Hyperlegible Next, in em (measured from the font file). */
export const CAP_HEIGHT_EM = 0.668

/** Of a 24-inch television of 1920 × 1080 CSS pixels. */
export const TELEVISION_PX_PER_MM = 3.61

export interface Reading {
  /** From eye to screen, metres, above 0. */
  readonly distanceM: number
  /** What a capital letter fills of the eye's field, minutes of arc, above 0. */
  readonly arcMinutes: number
}

/** Height in millimetres of a capital that fills the angle: 2·D·tan(a/2) (NUREG-0700 rev 2, §1.3.1-4). */
export const capHeightMm = ({ distanceM, arcMinutes }: Reading): number =>
  2 * distanceM * 1000 * Math.tan((arcMinutes / 60 / 2) * (Math.PI / 180))

/** Font size in CSS pixels at which a capital fills the angle; not rounded. */
export const fontPx = (reading: Reading, pxPerMm: number): number =>
  (capHeightMm(reading) / CAP_HEIGHT_EM) * pxPerMm

/** Minutes of arc that a capital fills: the way back, for measuring a screen. */
export const arcMinutesOf = (sizePx: number, pxPerMm: number, distanceM: number): number =>
  2 *
  Math.atan(((sizePx / pxPerMm) * CAP_HEIGHT_EM) / (2 * distanceM * 1000)) *
  (180 / Math.PI) *
  60
