/** What is said on each page of a paper, around what it is about. Millimetres. */
import { fitted, heightMm, type PlacedText, type SetText } from '#lib/paper/page/fit-text.ts'
import { type Box, frameOf, type Paper } from '#lib/paper/page/papers.ts'

export interface PageFrame {
  readonly title: string
  readonly station: string
  /** Its revision, and when it was printed; at most four. */
  readonly facts: readonly string[]
  /** null: it is real. */
  readonly demo: string | null
  /** Said before blanks of the head, as "Set up by". */
  readonly signed: readonly string[]
  readonly foot: string
  readonly page: string
}

export interface PlacedFrame {
  readonly title: PlacedText
  readonly station: PlacedText
  readonly facts: readonly PlacedText[]
  readonly demo: PlacedText | null
  readonly signed: readonly { readonly text: PlacedText; readonly line: Box }[]
  readonly rule: Box
  readonly foot: PlacedText
  readonly page: PlacedText
}

/** Of the head, at its right: facts, one below another. */
const SIDE = 62
const ROW = 6.8
const BLANK = 38
const LABEL = 15
const PAGE = 28
const DEMO = 5

const at = (set: SetText, box: Omit<Box, 'height'>): PlacedText => ({
  ...set,
  ...box,
  height: heightMm(set),
})

/** Head and foot of a page. */
export const frameTexts = (paper: Paper, frame: PageFrame): PlacedFrame => {
  const { head, foot } = frameOf(paper)
  const left = { x: head.x, width: head.width - SIDE - 4 }
  const right = { x: head.x + head.width - SIDE, width: SIDE }
  const title = at(fitted({ text: frame.title, pt: 20, weight: 'bold' }, left.width), {
    ...left,
    y: head.y,
  })
  const station = at(fitted({ text: frame.station, pt: 12, weight: 'bold' }, left.width), {
    ...left,
    y: title.y + title.height + 0.4,
  })
  const room = head.height - 1 - (frame.demo === null ? 0 : DEMO)
  const each = Math.min(4.6, room / Math.max(1, frame.facts.length))
  const pt = frame.facts.length > 3 ? 8.5 : 9.5
  const facts = frame.facts.map((text, row) =>
    at(fitted({ text, pt, weight: row === 0 ? 'bold' : 'regular' }, SIDE), {
      ...right,
      y: head.y + 0.5 + row * each,
    }),
  )
  return {
    ...{ title, station, facts },
    demo:
      frame.demo === null
        ? null
        : at(fitted({ text: frame.demo, pt: 9, weight: 'bold' }, SIDE), {
            ...right,
            y: head.y + head.height - DEMO,
          }),
    signed: frame.signed.map((text, row) => {
      const y = head.y + head.height - ROW
      const x = head.x + row * (BLANK + LABEL + 4)
      const said = at(fitted({ text, pt: 9 }, LABEL), { x, y: y + 2.2, width: LABEL })
      return { text: said, line: { x: x + LABEL, y, width: BLANK, height: ROW - 0.6 } }
    }),
    rule: { x: foot.x, y: foot.y, width: foot.width, height: 0.5 },
    foot: at(fitted({ text: frame.foot, pt: 8.5, lines: 2 }, foot.width - PAGE - 4), {
      ...{ x: foot.x, y: foot.y + 0.8, width: foot.width - PAGE - 4 },
    }),
    page: at(fitted({ text: frame.page, pt: 9.5, weight: 'bold' }, PAGE), {
      ...{ x: foot.x + foot.width - PAGE, y: foot.y + 0.8, width: PAGE },
    }),
  }
}
