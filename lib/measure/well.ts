import type { PanSize } from '#lib/measure/pans.ts'

/** A full-size well counted in 36 equal parts, the smallest number that every pan size divides. */
const WELL_PARTS = 36

const PARTS: Readonly<Record<PanSize, number>> = {
  full: 36,
  half: 18,
  third: 12,
  quarter: 9,
  sixth: 6,
  ninth: 4,
}

const countOf = (pans: readonly PanSize[], size: PanSize): number =>
  pans.reduce((sum, pan) => (pan === size ? sum + 1 : sum), 0)

/**
 * Whether these pans can stand in one full-size well together. Pans rest on the well's long edges
 * or on a bar across it, so they stand in rows across the well: a half-well row holds one half or
 * two quarters; a third-well row one third, two sixths, a sixth and a ninth, or three ninths. Equal
 * shares alone are not enough: a half, a third and a sixth leave a gap of 3.5 in, too short for the
 * sixth. Common practice, no source; outer sizes from memory.
 */
export function fitsOneWell(pans: readonly PanSize[]): boolean {
  const halfRows = countOf(pans, 'half') + Math.ceil(countOf(pans, 'quarter') / 2)
  const sixths = countOf(pans, 'sixth')
  const ninthsBesideSixth = sixths % 2
  const ninthsLeft = Math.max(0, countOf(pans, 'ninth') - ninthsBesideSixth)
  const thirdRows = countOf(pans, 'third') + Math.ceil(sixths / 2) + Math.ceil(ninthsLeft / 3)
  const taken = countOf(pans, 'full') * WELL_PARTS + halfRows * PARTS.half + thirdRows * PARTS.third
  return taken <= WELL_PARTS
}
