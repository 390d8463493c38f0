/** Where the pans of a well stand, seen from above: the crew below, columns from left to right. */
import { PAN_SIZES, type PanSize } from '#lib/measure/pans.ts'

/** In 36ths of a well, from its left end and from the guest's side. */
export interface Standing<Pan> {
  readonly pan: Pan
  readonly left: number
  readonly width: number
  readonly back: number
  readonly depth: number
}

/** How wide a pan's column is, and how many of its size stand behind one another in it. */
const SIZES: Readonly<Record<PanSize, { readonly width: number; readonly behind: number }>> = {
  full: { width: 36, behind: 1 },
  half: { width: 18, behind: 1 },
  third: { width: 12, behind: 1 },
  quarter: { width: 18, behind: 2 },
  sixth: { width: 12, behind: 2 },
  ninth: { width: 12, behind: 3 },
}

type Sized = { readonly size: PanSize }

const hasRoom = (column: readonly Sized[], { size }: Sized): boolean => {
  const sizes = new Set(column.map((one) => one.size))
  if (sizes.size === 1 && sizes.has(size)) return column.length < SIZES[size].behind
  // The other half of a column with one sixth in it takes a ninth.
  return size === 'ninth' && column.length === 1 && sizes.has('sixth')
}

/** Pans that share a column, each list in the order given; the columns by their first pan. */
export const columnsOf = <Pan extends Sized>(pans: readonly Pan[]): readonly (readonly Pan[])[] => {
  const order = (pan: Pan): number => pans.indexOf(pan)
  const bySize = PAN_SIZES.flatMap((size) => pans.filter((one) => one.size === size))
  const columns: Pan[][] = []
  for (const pan of bySize) {
    const open = columns.find((column) => hasRoom(column, pan))
    if (open) open.push(pan)
    else columns.push([pan])
  }
  const first = (column: readonly Pan[]): number => Math.min(...column.map(order))
  return columns
    .map((column) => column.toSorted((one, other) => order(one) - order(other)))
    .sort((one, other) => first(one) - first(other))
}

/**
 * Pans as they are put in: those of a size that stand behind one another share a column, the first
 * at the back. What doesn't fit any more stands beyond 36, as `fitsOneWell` counts it: common
 * practice, no source.
 */
export const placesIn = <Pan extends Sized>(pans: readonly Pan[]): readonly Standing<Pan>[] => {
  let left = 0
  return columnsOf(pans).flatMap((column) => {
    const start = left
    const width = Math.max(...column.map(({ size }) => SIZES[size].width))
    left += width
    const depth = 36 / Math.min(...column.map(({ size }) => SIZES[size].behind))
    return column.map((pan, place) => ({ pan, left: start, width, back: place * depth, depth }))
  })
}

/** Of a well's width what its pans take, in 36ths: above 36 they don't fit. */
export const widthTaken = (pans: readonly Sized[]): number =>
  placesIn(pans).reduce((most, { left, width }) => Math.max(most, left + width), 0)
