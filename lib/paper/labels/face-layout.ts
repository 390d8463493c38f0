/** Where everything of a label stands: one where it fits, more where it doesn't at the least size. */
import {
  cutPart,
  type FaceBlank,
  type Laid,
  LOUD_PT,
  laidPart,
  type Sizes,
} from '#lib/paper/labels/face-flow.ts'
import { type DrawnPan, type Head, headOf } from '#lib/paper/labels/face-head.ts'
import { LABEL_PAD } from '#lib/paper/labels/label-stock.ts'
import type { LabelTexts, Part } from '#lib/paper/labels/label-texts.ts'
import type { PlacedText } from '#lib/paper/page/fit-text.ts'
import { type Box, LEAST_PT } from '#lib/paper/page/papers.ts'

export interface Face {
  readonly id: string
  /** Which of how many labels it is, from 1. */
  readonly nth: number
  readonly of: number
  readonly texts: readonly PlacedText[]
  readonly blanks: readonly FaceBlank[]
  readonly pans: readonly DrawnPan[]
  /** Over the pans of each well. */
  readonly bars: readonly Box[]
}

interface Size {
  readonly width: number
  readonly height: number
}

/** On a label that has room it is read from further away. */
const LARGER = [1.5, 1.4, 1.3, 1.2, 1.1]
const SCALES = Array.from({ length: 15 }, (_, at) => 1 - at * 0.05)
const LEAST_SCALE = 0.3
/** A name shrinks so far with the rest, and further only where nothing else makes it fit. */
const NAME_SCALE = 0.6
const NAME_SCALES = [NAME_SCALE, 0.55, 0.5, 0.45, 0.4, 0.35, LEAST_SCALE]
const GAP = 0.7
/** No line to write on is lower, millimetres: common practice, no source. */
const LEAST_BLANK = 4.6
/** A line to write on: as high as the label has room for. */
const blankOf = (height: number): number => Math.min(7, Math.max(LEAST_BLANK, height * 0.115))

/** What is tried in turn, so that it is one label. */
const tries = (height: number): readonly Sizes[] => {
  const blank = blankOf(height)
  const small = { scale: LEAST_SCALE, blank: Math.max(LEAST_BLANK, blank * 0.75) }
  return [
    ...LARGER.map((scale) => ({ scale, blank, name: 1 })),
    ...SCALES.map((scale) => ({ scale, blank, name: Math.max(scale, NAME_SCALE) })),
    ...NAME_SCALES.map((name) => ({ ...small, name })),
  ]
}

const below = (laid: Laid, by: number): Pick<Laid, 'texts' | 'blanks'> => ({
  texts: laid.texts.map((one) => ({ ...one, y: one.y + by })),
  blanks: laid.blanks.map((one) => ({ ...one, y: one.y + by })),
})

const stackedParts = (parts: readonly Part[], width: number, sizes: Sizes, gap: number): Laid => {
  const texts: PlacedText[] = []
  const blanks: FaceBlank[] = []
  let y = 0
  for (const part of parts) {
    const laid = laidPart(part, width, sizes)
    const moved = below(laid, y)
    texts.push(...moved.texts)
    blanks.push(...moved.blanks)
    y += laid.height + gap
  }
  return { texts, blanks, height: Math.max(0, y - gap) }
}

/** Gaps around what stands between head and foot. */
const neededHeight = (head: Laid, body: Laid, foot: Laid): number =>
  head.height +
  (body.height > 0 ? GAP + body.height : 0) +
  (foot.height > 0 ? GAP + foot.height : 0)

const framed = (one: Omit<Face, 'id' | 'nth' | 'of'>): Omit<Face, 'id' | 'nth' | 'of'> => {
  const into = <Part extends Box>(all: readonly Part[]): readonly Part[] =>
    all.map((box) => ({ ...box, x: box.x + LABEL_PAD, y: box.y + LABEL_PAD }))
  return {
    texts: into(one.texts),
    blanks: into(one.blanks),
    pans: into(one.pans),
    bars: into(one.bars),
  }
}

interface AsOne {
  readonly face: Omit<Face, 'id' | 'nth' | 'of'>
  readonly height: number
}

const asOne = (texts: LabelTexts, { width, height }: Size, sizes: Sizes): AsOne => {
  const inner = width - 2 * LABEL_PAD
  const head = headOf(texts, inner, height, sizes, null)
  const body = stackedParts(texts.parts, inner, sizes, GAP * 0.5)
  const foot = stackedParts(texts.foot, inner, sizes, 0.3)
  const needs = neededHeight(head, body, foot)
  const footAt = Math.max(height - 2 * LABEL_PAD, needs) - foot.height
  const [middle, end] = [below(body, head.height + GAP), below(foot, footAt)]
  return {
    height: needs + 2 * LABEL_PAD,
    face: framed({
      ...head,
      texts: [...head.texts, ...middle.texts, ...end.texts],
      blanks: [...middle.blanks, ...end.blanks],
    }),
  }
}

const emptyFoot: Laid = { texts: [], blanks: [], height: 0 }

/** What is read first: loud parts with what stands before them, else the first sentence. */
const firstRead = (parts: readonly Part[]): readonly Part[] => {
  const loud = parts.findLastIndex((part) => part.kind === 'said' && part.pt >= LOUD_PT)
  const first = parts.findIndex(({ kind }) => kind === 'said')
  return parts.slice(0, 1 + (loud >= 0 ? loud : first))
}

const asPart = (items: readonly string[]): readonly Part[] => {
  const said = items.filter((one) => one !== '')
  return said.length === 0
    ? []
    : [{ kind: 'said', lead: '', again: '', items: said, weight: 'regular', pt: LEAST_PT }]
}

/**
 * The head of the first of several, and what goes on behind instead: where what is loud has no room
 * below it, the drawing waits, then what it is.
 */
const firstHead = (
  texts: LabelTexts,
  room: number,
  laid: (texts: LabelTexts) => Head,
): { readonly head: Head; readonly behind: readonly Part[] } => {
  const { about, drawn } = texts
  const beside = drawn?.beside ?? []
  const whole = laid(texts)
  if (whole.height <= room) return { head: whole, behind: [] }
  const named = laid({ ...texts, drawn: null })
  return named.height <= room
    ? { head: named, behind: asPart(beside) }
    : { head: laid({ ...texts, about: '', drawn: null }), behind: asPart([about, ...beside]) }
}

/** At the least size on as many as it takes: each has its name, and a time where one is printed. */
const asSeveral = (texts: LabelTexts, { width, height }: Size): readonly Face[] => {
  const inner = { width: width - 2 * LABEL_PAD, height: height - 2 * LABEL_PAD }
  const sizes: Sizes = { scale: 0, name: 0.4, blank: blankOf(height) }
  const again: readonly Part[] =
    texts.footAgain === ''
      ? []
      : [
          {
            ...{ kind: 'said', lead: texts.footAgain, again: texts.footAgain, items: [] },
            ...{ weight: 'bold', pt: LEAST_PT },
          },
        ]
  const pages: Omit<Face, 'id' | 'nth' | 'of'>[] = []
  const heads: Head[] = []
  let rest = texts.parts
  let isFootDone = texts.foot.length === 0
  while (rest.length > 0 || !isFootDone || pages.length === 0) {
    const nth = pages.length + 1
    const asked = stackedParts(isFootDone ? again : texts.foot, inner.width, sizes, 0.3)
    const laid = (of: LabelTexts) => headOf(of, inner.width, height, sizes, { nth, of: nth })
    const loud = stackedParts(firstRead(texts.parts), inner.width, sizes, GAP * 0.5).height
    const room = inner.height - asked.height - loud - (loud > 0 ? 3 : 1) * GAP
    const { head, behind } =
      nth === 1 ? firstHead(texts, room, laid) : { head: laid(texts), behind: [] }
    rest = [...rest, ...behind]
    const hasFoot = head.height + GAP + asked.height <= inner.height - (isFootDone ? 8 : 0)
    const foot = hasFoot ? asked : emptyFoot
    if (!isFootDone && !hasFoot) rest = [...texts.foot, ...rest]
    isFootDone = true
    const footAt = inner.height - foot.height
    const end = below(foot, footAt)
    const face = { texts: [...head.texts, ...end.texts], blanks: [...end.blanks] }
    let y = head.height + GAP
    let isEmpty = true
    while (rest.length > 0) {
      const [part, ...others] = rest
      if (part === undefined) break
      const room = { width: inner.width, height: footAt - (foot.height > 0 ? GAP : 0) - y }
      const cut = cutPart(part, room, sizes, isEmpty && nth > 1)
      if (cut === null) break
      const moved = below(cut.laid, y)
      face.texts.push(...moved.texts)
      face.blanks.push(...moved.blanks)
      // No gap: a line more is often one label less.
      y += cut.laid.height
      isEmpty = false
      rest = cut.rest === null ? others : [cut.rest, ...others]
      if (cut.rest !== null) break
    }
    pages.push(framed({ ...head, ...face }))
    heads.push(head)
    if (pages.length > MOST_FACES) throw new RangeError(`${texts.name}: the label is too small`)
  }
  const of = pages.length
  return pages.map((page, at) => ({
    id: texts.id,
    nth: at + 1,
    of,
    ...page,
    texts: page.texts.map((text) =>
      text.lines.length === 1 && text.lines[0] === texts.part(at + 1, at + 1)
        ? { ...text, lines: [texts.part(at + 1, of)] }
        : text,
    ),
  }))
}

/** A label that goes on for so long is no label. */
const MOST_FACES = 40

/**
 * A label of a size, millimetres: at its sizes where it fits, smaller by steps down to the least size,
 * else on several. @throws RangeError where a label is too small for any words
 */
export const labelFaces = (texts: LabelTexts, size: Size): readonly Face[] => {
  for (const sizes of tries(size.height)) {
    const { face, height } = asOne(texts, size, sizes)
    if (height <= size.height) return [{ id: texts.id, nth: 1, of: 1, ...face }]
  }
  return asSeveral(texts, size)
}

/** No roll's label is shorter or longer, millimetres. */
const ROLL = { least: 25, most: 120, step: 1, laidFor: 60 } as const

/** How long a roll's labels are cut, so that the longest of them fits at its sizes. */
export const rollHeight = (all: readonly LabelTexts[], width: number): number => {
  const needs = all.map((texts) => asOne(texts, { width, height: ROLL.laidFor }, ROLL_SIZES).height)
  return Math.min(ROLL.most, Math.max(ROLL.least, Math.ceil(Math.max(0, ...needs))))
}

/** Letters of a continuous roll: its name at 17 points. */
const ROLL_SIZES: Sizes = { scale: 0.7, name: 0.7, blank: blankOf(ROLL.laidFor) }
