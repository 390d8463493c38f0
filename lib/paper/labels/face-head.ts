/** The head of a label: its name, what it is, and the line small with the pan where it goes. */
import { type Laid, type Sizes, scaledPt } from '#lib/paper/labels/face-flow.ts'
import type { Drawn, LabelTexts } from '#lib/paper/labels/label-texts.ts'
import { heightMm, type PlacedText, wrapped } from '#lib/paper/page/fit-text.ts'
import { type Weight, widthEm } from '#lib/paper/page/letter-widths.ts'
import { type Box, MM_PER_PT } from '#lib/paper/page/papers.ts'

export interface DrawnPan extends Box {
  readonly isOwn: boolean
}

const ABOUT_PT = 9
const BAR = 0.5
/** No pan is drawn wider or narrower, millimetres. */
const PAN = { most: 3.2, least: 0.9 } as const
const PAN_TALL = 1.45
const WELL_GAP = 1.1

const namePt = (height: number): number => (height >= 45 ? 24 : height >= 34 ? 18 : 14)

const placed = (
  text: string,
  { x, y, width }: Pick<Box, 'x' | 'y' | 'width'>,
  pt: number,
  weight: Weight,
): PlacedText => {
  const set = { pt, weight, lines: wrapped(text, width, pt, weight) }
  return { ...set, x, y, width, height: heightMm(set) }
}

const widthMm = (text: string, pt: number, weight: Weight): number =>
  widthEm(text, weight) * pt * MM_PER_PT

export interface Head extends Laid {
  readonly pans: readonly DrawnPan[]
  readonly bars: readonly Box[]
}

const drawnLine = (
  { wells, beside }: Drawn,
  { x, y, width }: Pick<Box, 'x' | 'y' | 'width'>,
  { scale }: Sizes,
): Head => {
  const count = wells.reduce((sum, well) => sum + well.length, 0)
  const gaps = Math.max(0, wells.length - 1) * WELL_GAP
  // At most half of the label, so that the words beside it have room.
  const wide = Math.max(
    PAN.least,
    Math.min(PAN.most * Math.max(0.7, scale), (width * 0.55 - gaps) / Math.max(1, count)),
  )
  const tall = Math.min(wide, PAN.most) * PAN_TALL + 0.6
  const pans: DrawnPan[] = []
  const bars: Box[] = []
  // A line so long that no pan could be told from another is said alone.
  const isDrawn = count * wide + gaps <= width * 0.7
  let left = x
  for (const well of isDrawn ? wells : []) {
    bars.push({ x: left, y, width: well.length * wide - 0.3, height: BAR })
    for (const isOwn of well) {
      pans.push({ x: left, y: y + BAR + 0.4, width: wide - 0.3, height: tall, isOwn })
      left += wide
    }
    left += WELL_GAP
  }
  const drawnWidth = isDrawn ? count * wide + gaps + 2 : 0
  const pt = scaledPt(ABOUT_PT, scale)
  const room = { x: x + drawnWidth, width: width - drawnWidth }
  const texts: PlacedText[] = []
  let down = y
  for (const text of beside.filter((one) => one !== '')) {
    const one = placed(text, { ...room, y: down }, pt, 'regular')
    texts.push(one)
    down += one.height
  }
  const height = Math.max(isDrawn ? BAR + 0.4 + tall : 0, down - y)
  return { texts, blanks: [], pans, bars, height }
}

/** Its name, which of how many it is, and on the first what it is and where it goes. */
export const headOf = (
  { name, about, drawn, part }: LabelTexts,
  width: number,
  height: number,
  sizes: Sizes,
  which: { readonly nth: number; readonly of: number } | null,
): Head => {
  const partPt = scaledPt(9, sizes.scale)
  const said = which === null ? '' : part(which.nth, which.of)
  // As wide as any: how many there are isn't known before they are laid.
  const saidWidth = which === null ? 0 : widthMm(part(88, 88), partPt, 'bold')
  const title = placed(
    name,
    { x: 0, y: 0, width: width - (saidWidth > 0 ? saidWidth + 1.5 : 0) },
    scaledPt(namePt(height), sizes.name),
    'bold',
  )
  const texts = [title]
  if (said !== '')
    texts.push(placed(said, { x: width - saidWidth, y: 0, width: saidWidth }, partPt, 'bold'))
  let y = title.height
  const isFirst = which === null || which.nth === 1
  if (isFirst && about !== '') {
    const line = placed(about, { x: 0, y, width }, scaledPt(ABOUT_PT, sizes.scale), 'regular')
    texts.push(line)
    y += line.height
  }
  if (!isFirst || drawn === null) return { texts, blanks: [], pans: [], bars: [], height: y }
  const line = drawnLine(drawn, { x: 0, y: y + 0.5, width }, sizes)
  return { ...line, texts: [...texts, ...line.texts], height: y + 0.5 + line.height }
}
