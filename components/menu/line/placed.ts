import { type Stand, WELL_IN } from '#lib/measure/well-layout.ts'

const part = (inches: number, of: number): string => `${(inches / of) * 100}%`

/** Where something stands in a well's opening, to scale, as a style. */
export const placed = ({ left, top, along, across }: Stand) => ({
  left: part(left, WELL_IN.along),
  top: part(top, WELL_IN.across),
  width: part(along, WELL_IN.along),
  height: part(across, WELL_IN.across),
})
