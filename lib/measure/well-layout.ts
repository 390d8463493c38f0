import { PAN_SIZES, type PanSize } from '#lib/measure/pans.ts'
import { fitsOneWell } from '#lib/measure/well.ts'

/** The opening of a full-size well, inches: along the line, and across it to the crew. */
export const WELL_IN = { along: 20.75, across: 12.75 } as const

/** Inches. */
interface Size {
  readonly along: number
  readonly across: number
}

/** Outer sizes by trade, from memory but the full size: fixtures/reference/pan-outer-sizes.json. */
const OUTER_IN: Readonly<Record<PanSize, Size>> = {
  full: { along: 20.75, across: 12.75 },
  half: { along: 10.375, across: 12.75 },
  third: { along: 6.875, across: 12.75 },
  quarter: { along: 10.375, across: 6.375 },
  sixth: { along: 6.875, across: 6.25 },
  ninth: { along: 6.875, across: 4.25 },
}

interface Standing {
  readonly pan: string
  readonly size: PanSize
}

/** Where something is in a well from above, inches from the corner that is left and back. */
export interface Stand extends Size {
  readonly left: number
  readonly top: number
}

export interface WellFromAbove {
  readonly stands: readonly (Stand & { readonly pan: string })[]
  /** What is left bare and could take a pan, left to right. */
  readonly gaps: readonly Stand[]
  readonly fits: boolean
  /** How far the pans reach along the line; more than the well's where they don't fit, inches. */
  readonly reach: number
}

/** Pans that stand one behind another across the well, the first at the back. */
type Row = readonly Standing[]

const ofSize = (pans: readonly Standing[], size: PanSize): readonly Standing[] =>
  pans.filter((pan) => pan.size === size)

const inGroups = (pans: readonly Standing[], of: number): readonly Row[] =>
  Array.from({ length: Math.ceil(pans.length / of) }, (_, at) => pans.slice(at * of, at * of + of))

/** The rows that `fitsOneWell` counts, in the order of the first pan of each. */
const rowsOf = (pans: readonly Standing[]): readonly Row[] => {
  const sixths = inGroups(ofSize(pans, 'sixth'), 2)
  const ninths = ofSize(pans, 'ninth')
  const hasLone = sixths.at(-1)?.length === 1
  const [beside, others] = hasLone ? [ninths.slice(0, 1), ninths.slice(1)] : [[], ninths]
  const rows: readonly Row[] = [
    ...(['full', 'half', 'third'] as const).flatMap((size) => inGroups(ofSize(pans, size), 1)),
    ...inGroups(ofSize(pans, 'quarter'), 2),
    ...sixths.map((row, at) => (at === sixths.length - 1 ? [...row, ...beside] : row)),
    ...inGroups(others, 3),
  ]
  const placeOf = (row: Row) => pans.findIndex(({ pan }) => pan === row[0]?.pan)
  return rows.toSorted((one, other) => placeOf(one) - placeOf(other))
}

const acrossOf = (row: Row): number => row.reduce((sum, { size }) => sum + OUTER_IN[size].across, 0)

/** A hair more than what is lost between pans that are cut a little smaller than their share. */
const SLACK_IN = 0.3

/**
 * The pans of a full-size well as they stand, from above, in building order from the left. Ids of
 * pans are unique. Where they don't fit, the last stand beyond the well's right edge.
 */
export const wellFromAbove = (pans: readonly Standing[]): WellFromAbove => {
  const rows = rowsOf(pans)
  let left = 0
  const stands: (Stand & { pan: string })[] = []
  const gaps: Stand[] = []
  for (const row of rows) {
    const along = OUTER_IN[row[0]?.size ?? 'full'].along
    let top = 0
    for (const { pan, size } of row) {
      const { across } = OUTER_IN[size]
      stands.push({ pan, left, top, along, across })
      top += across
    }
    const bare = WELL_IN.across - acrossOf(row)
    if (bare > OUTER_IN.ninth.across - SLACK_IN) gaps.push({ left, top, along, across: bare })
    left += along
  }
  const bare = WELL_IN.along - left
  if (bare > OUTER_IN.third.along - SLACK_IN)
    gaps.push({ left, top: 0, along: bare, across: WELL_IN.across })
  return { stands, gaps, fits: fitsOneWell(pans.map(({ size }) => size)), reach: left }
}

/** Sizes of which one more fits beside these, the largest first; none where the well is full. */
export const sizesThatFit = (pans: readonly PanSize[]): readonly PanSize[] =>
  PAN_SIZES.filter((size) => fitsOneWell([...pans, size]))
