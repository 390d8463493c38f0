/** Parts of a label below one another, and where a part is cut so that the rest goes on elsewhere. */
import type { Cell, Fill, Part, Row, Said } from '#lib/paper/labels/label-texts.ts'
import {
  heightMm,
  lineMm,
  type PlacedText,
  type SetText,
  wrapped,
} from '#lib/paper/page/fit-text.ts'
import { type Weight, widthEm } from '#lib/paper/page/letter-widths.ts'
import { type Box, LEAST_PT, MM_PER_PT } from '#lib/paper/page/papers.ts'

export interface FaceBlank extends Box {
  readonly of: Fill
}

export interface Laid {
  readonly texts: readonly PlacedText[]
  readonly blanks: readonly FaceBlank[]
  readonly height: number
}

export interface Sizes {
  /** Of all type: 1 as it is asked for, less where there is less room; never below the least. */
  readonly scale: number
  /** Of its name, which is read from afar: as a rule less small than the rest. */
  readonly name: number
  /** Millimetres of a line to write on. */
  readonly blank: number
}

/** What a hand needs for it, millimetres. Common practice, no source. */
const FILL_WIDTH: Readonly<Record<Fill, number>> = {
  moment: 25,
  hour: 14,
  degrees: 13,
  initials: 12,
  words: 22,
}

/** On a label that is narrower, millimetres, so that what is written stands on one line. */
const NARROW = { under: 66, fill: { hour: 11.5, initials: 10 } as Partial<Record<Fill, number>> }

const fillWidth = (of: Fill, most: number): number =>
  Math.min(most, (most < NARROW.under ? NARROW.fill[of] : undefined) ?? FILL_WIDTH[of])

const ROW_PT = 10
/** So large where there is room, it is read first. */
export const LOUD_PT = 12
const CELL_GAP = 2.5
const WORD_GAP = 0.9

/** In half points. */
export const scaledPt = (pt: number, scale: number): number =>
  Math.max(LEAST_PT, Math.floor(pt * scale * 2) / 2)

const widthMm = (text: string, pt: number, weight: Weight): number =>
  text === '' ? 0 : widthEm(text, weight) * pt * MM_PER_PT

const setText = (text: string, width: number, pt: number, weight: Weight): SetText => ({
  pt,
  weight,
  lines: wrapped(text, width, pt, weight),
})

interface LaidCell extends Laid {
  readonly width: number
}

/** A cell as if it stood in the corner; in more lines where it is wider than its row. */
const laidCell = (cell: Cell, most: number, { scale, blank }: Sizes): LaidCell => {
  const pt = scaledPt(ROW_PT, scale)
  const loud = cell.isLoud ? scaledPt(LOUD_PT, scale) : pt
  const fill = cell.blank === null ? 0 : fillWidth(cell.blank, most)
  const label = widthMm(cell.label, pt, 'regular')
  const value = widthMm(cell.value, loud, 'bold')
  const gap = (width: number) => (width > 0 ? WORD_GAP : 0)
  const together = label + gap(label) + value + gap(value) + fill
  const line = Math.max(lineMm(loud), fill > 0 ? blank : 0)
  const boxed = (set: SetText, x: number, y: number, width: number): PlacedText => ({
    ...set,
    x,
    y,
    width,
    height: heightMm(set),
  })
  if (together <= most) {
    // All on one line, on which one writes too.
    const sit = (size: number) => line - lineMm(size) - (fill > 0 ? 0.4 : 0)
    const at = label + gap(label)
    return {
      width: together,
      height: line,
      texts: [
        ...(label > 0
          ? [boxed({ pt, weight: 'regular', lines: [cell.label] }, 0, Math.max(0, sit(pt)), label)]
          : []),
        ...(value > 0
          ? [
              boxed(
                { pt: loud, weight: 'bold', lines: [cell.value] },
                at,
                Math.max(0, sit(loud)),
                value,
              ),
            ]
          : []),
      ],
      blanks:
        cell.blank === null
          ? []
          : [
              {
                of: cell.blank,
                x: together - fill,
                y: line - blank,
                width: fill,
                height: blank - 0.8,
              },
            ],
    }
  }
  const texts: PlacedText[] = []
  let y = 0
  for (const [text, size, weight] of [
    [cell.label, pt, 'regular'],
    [cell.value, loud, 'bold'],
  ] as const) {
    if (text === '') continue
    const set = setText(text, most, size, weight)
    texts.push(boxed(set, 0, y, most))
    y += heightMm(set)
  }
  if (cell.blank === null) return { width: most, height: y, texts, blanks: [] }
  return {
    width: most,
    height: y + blank,
    texts,
    blanks: [{ of: cell.blank, x: 0, y, width: fill, height: blank }],
  }
}

const movedTo = <One extends Box>(all: readonly One[], x: number, y: number): readonly One[] =>
  all.map((one) => ({ ...one, x: one.x + x, y: one.y + y }))

/** Cells side by side, on another line where there is no room; they sit on its foot. */
const laidRow = ({ cells }: Row, width: number, sizes: Sizes): Laid => {
  const lines: { cells: LaidCell[]; width: number }[] = []
  for (const cell of cells) {
    const one = laidCell(cell, width, sizes)
    const line = lines.at(-1)
    if (line !== undefined && line.width + CELL_GAP + one.width <= width) {
      line.cells.push(one)
      line.width += CELL_GAP + one.width
    } else lines.push({ cells: [one], width: one.width })
  }
  const texts: PlacedText[] = []
  const blanks: FaceBlank[] = []
  let y = 0
  for (const line of lines) {
    const height = Math.max(...line.cells.map((one) => one.height))
    let x = 0
    for (const one of line.cells) {
      texts.push(...movedTo(one.texts, x, y + height - one.height))
      blanks.push(...movedTo(one.blanks, x, y + height - one.height))
      x += one.width + CELL_GAP
    }
    y += height
  }
  return { texts, blanks, height: y }
}

const sentence = (lead: string, items: readonly string[]): string =>
  [lead, items.join(', ')].filter((one) => one !== '').join(' ')

const laidSaid = ({ weight, pt }: Said, text: string, width: number, { scale }: Sizes): Laid => {
  const set = setText(text, width, scaledPt(pt, scale), weight)
  const height = heightMm(set)
  return { texts: [{ ...set, x: 0, y: 0, width, height }], blanks: [], height }
}

export const laidPart = (part: Part, width: number, sizes: Sizes): Laid =>
  part.kind === 'row'
    ? laidRow(part, width, sizes)
    : laidSaid(part, sentence(part.lead, part.items), width, sizes)

/** What of a list still goes here, and what goes on elsewhere; null: nothing of it fits here. */
const cutList = (
  part: Said,
  { width, height }: Pick<Box, 'width' | 'height'>,
  sizes: Sizes,
): { readonly laid: Laid; readonly rest: Said } | null => {
  const fits = (items: readonly string[]): Laid | null => {
    const laid = laidSaid(part, `${sentence(part.lead, items)} …`, width, sizes)
    return laid.height <= height ? laid : null
  }
  const { items } = part
  for (let taken = items.length - 1; taken > 0; taken -= 1) {
    const laid = fits(items.slice(0, taken))
    if (laid) return { laid, rest: { ...part, lead: part.again, items: items.slice(taken) } }
  }
  return null
}

/** A single item by its words, or its letters, for a label that is too small for one of it. */
const cutItem = (
  part: Said,
  { width, height }: Pick<Box, 'width' | 'height'>,
  sizes: Sizes,
): { readonly laid: Laid; readonly rest: Said } | null => {
  const [first = '', ...others] = part.items
  for (const glue of [' ', '']) {
    const bits = glue === ' ' ? first.split(/\s+/) : [...first]
    for (let taken = bits.length - 1; taken > 0; taken -= 1) {
      const text = `${sentence(part.lead, [bits.slice(0, taken).join(glue).trim()])} …`
      const laid = laidSaid(part, text, width, sizes)
      if (laid.height > height) continue
      const items = [bits.slice(taken).join(glue).trim(), ...others]
      return { laid, rest: { ...part, lead: part.again, items } }
    }
  }
  return null
}

/**
 * As much of a part as a place has room for. `isEmpty`: nothing stands there yet, so that waiting for a
 * better place is no use.
 */
export const cutPart = (
  part: Part,
  place: Pick<Box, 'width' | 'height'>,
  sizes: Sizes,
  isEmpty: boolean,
): { readonly laid: Laid; readonly rest: Part | null } | null => {
  const whole = laidPart(part, place.width, sizes)
  if (whole.height <= place.height) return { laid: whole, rest: null }
  if (part.kind === 'row') {
    // By its cells.
    for (let taken = part.cells.length - 1; taken > 0; taken -= 1) {
      const laid = laidRow({ kind: 'row', cells: part.cells.slice(0, taken) }, place.width, sizes)
      if (laid.height <= place.height)
        return { laid, rest: { kind: 'row', cells: part.cells.slice(taken) } }
    }
    return null
  }
  return cutList(part, place, sizes) ?? (isEmpty ? cutItem(part, place, sizes) : null)
}
