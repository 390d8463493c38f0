import type { ReactNode } from 'react'
import { boxStyle, onPage, Placed } from '#components/print/placed.tsx'
import styles from '#components/print/print.module.css'
import { frameTexts, type PageFrame } from '#lib/paper/page/head-layout.ts'
import { PAPER_MM, type Paper } from '#lib/paper/page/papers.ts'

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
  const { title, station, facts, demo, signed, rule, foot, page } = frameTexts(paper, frame)
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
        {demo !== null && <Placed className={styles.demo ?? ''} text={demo} />}
        {signed.map(({ text, line }) => (
          <div key={text.x}>
            <Placed text={text} />
            <span className={styles.rule} style={boxStyle(line)} />
          </div>
        ))}
      </header>
      {children}
      <footer>
        <span className={styles.rule} style={boxStyle(rule)} />
        <Placed text={foot} />
        <Placed className={styles.right ?? ''} text={page} />
      </footer>
    </section>
  )
}
