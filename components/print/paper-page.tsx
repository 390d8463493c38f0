import type { ReactNode } from 'react'
import { boxStyle, onPage, Placed } from '#components/print/placed.tsx'
import styles from '#components/print/print.module.css'
import { fitted, heightMm, type PlacedText, type SetText } from '#lib/paper/page/fit-text.ts'
import { type Box, frameOf, PAPER_MM, type Paper } from '#lib/paper/page/papers.ts'

/** What is said on each page of a paper, around what it is about. */
export interface PageFrame {
  readonly title: string
  readonly station: string
  /** Its revision, and when it was printed. */
  readonly facts: readonly string[]
  /** null: it is real. */
  readonly demo: string | null
  /** Said before blanks of the head, as "Set up by". */
  readonly signed: readonly string[]
  readonly foot: string
  readonly page: string
}

const BLANK_MM = 38
const LABEL_MM = 15
const ROW_MM = 8

const at = (set: SetText, box: Omit<Box, 'height'>): PlacedText => ({
  ...set,
  ...box,
  height: heightMm(set),
})

/** One page at its own size, with its head and foot. */
export function PaperPage({
  paper,
  frame,
  children,
}: {
  readonly paper: Paper
  readonly frame: PageFrame
  readonly children: ReactNode
}) {
  const { head, foot } = frameOf(paper)
  const side = 62
  const left = { x: head.x, width: head.width - side - 4 }
  const right = { x: head.x + head.width - side, width: side }
  const title = at(fitted({ text: frame.title, pt: 20, weight: 'bold' }, left.width), {
    ...left,
    y: head.y,
  })
  const station = at(
    fitted({ text: frame.station, pt: 12, weight: 'bold', lines: 1 }, left.width),
    { ...left, y: title.y + title.height + 0.5 },
  )
  const facts = frame.facts.map((text, row) =>
    at(fitted({ text, pt: 9.5, weight: row === 0 ? 'bold' : 'regular' }, side), {
      ...right,
      y: head.y + 1 + row * 4.6,
    }),
  )
  const signed = frame.signed.map((text, row) => {
    const y = head.y + head.height - ROW_MM
    const x = head.x + row * (BLANK_MM + LABEL_MM + 4)
    const said = at(fitted({ text, pt: 9 }, LABEL_MM), { x, y: y + 3.4, width: LABEL_MM })
    return { text: said, line: { x: x + LABEL_MM, y, width: BLANK_MM, height: ROW_MM - 0.8 } }
  })
  const pageAt = { x: foot.x + foot.width - 28, y: foot.y + 3, width: 28 }
  return (
    <section
      className={styles.page}
      data-paper={paper}
      aria-label={frame.page}
      style={{ width: onPage(PAPER_MM[paper].width), height: onPage(PAPER_MM[paper].height) }}
    >
      <header>
        <Placed text={title} />
        <Placed text={station} />
        {facts.map((text) => (
          <Placed key={text.y} text={text} className={styles.right ?? ''} />
        ))}
        {frame.demo !== null && (
          <Placed
            className={styles.demo ?? ''}
            text={at(fitted({ text: frame.demo, pt: 9, weight: 'bold' }, side), {
              ...right,
              y: head.y + head.height - 6.5,
            })}
          />
        )}
        {signed.map(({ text, line }) => (
          <div key={text.x}>
            <Placed text={text} />
            <span className={styles.rule} style={boxStyle(line)} />
          </div>
        ))}
      </header>
      {children}
      <footer>
        <span
          className={styles.rule}
          style={boxStyle({ x: foot.x, y: foot.y, width: foot.width, height: 0.5 })}
        />
        <Placed
          text={at(fitted({ text: frame.foot, pt: 8.5, lines: 2 }, foot.width - 32), {
            x: foot.x,
            y: foot.y + 1.4,
            width: foot.width - 32,
          })}
        />
        <Placed
          className={styles.right ?? ''}
          text={at(fitted({ text: frame.page, pt: 9.5, weight: 'bold' }, 28), pageAt)}
        />
      </footer>
    </section>
  )
}
