/** The line as a row of pans on paper: small with one black, or large with their names. Not to scale. */
import { inBox, type PlacedText } from '#lib/paper/page/fit-text.ts'
import type { Box } from '#lib/paper/page/papers.ts'

export interface StripPan {
  readonly number: number
  readonly short: readonly string[]
}

export interface PlacedStripPan {
  readonly number: number
  readonly box: Box
  readonly texts: readonly PlacedText[]
}

export interface PlacedStrip {
  /** Above the pans of each well. */
  readonly bars: readonly Box[]
  readonly pans: readonly PlacedStripPan[]
}

const BAR = 0.9
/** Of the width, all gaps together at most. */
const MOST_GAPS = 0.25

/** Number above, short name below it where both fit at the least size; else the number, else nothing. */
const namesIn = ({ number, short }: StripPan, box: Box): readonly PlacedText[] => {
  const inner = { width: box.width - 0.8, height: box.height - 0.8 }
  const set =
    inBox([String(number), ...short], inner, 9, 'bold') ?? inBox([String(number)], inner, 9, 'bold')
  if (set === null) return []
  const height = set.lines.length * set.pt * 1.2 * (25.4 / 72)
  return [{ ...set, x: box.x, width: box.width, y: box.y + (box.height - height) / 2, height }]
}

export const lineStrip = (
  wells: readonly (readonly StripPan[])[],
  { x, y, width, height }: Box,
  isNamed: boolean,
): PlacedStrip => {
  const count = wells.reduce((sum, pans) => sum + pans.length, 0)
  const gap = Math.min(2.4, (width * MOST_GAPS) / Math.max(1, wells.length))
  const each = (width - gap * (wells.length - 1)) / Math.max(1, count)
  const between = Math.min(0.8, each * 0.15)
  const bars: Box[] = []
  const placed: PlacedStripPan[] = []
  let left = x
  for (const pans of wells) {
    bars.push({ x: left, y, width: each * pans.length - between, height: BAR })
    for (const pan of pans) {
      const box = { x: left, y: y + BAR + 0.4, width: each - between, height: height - BAR - 0.4 }
      placed.push({ number: pan.number, box, texts: isNamed ? namesIn(pan, box) : [] })
      left += each
    }
    left += gap
  }
  return { bars, pans: placed }
}
