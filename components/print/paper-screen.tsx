import type { CSSProperties, ReactNode } from 'react'
import styles from '#components/print/print.module.css'
import { usePaperWords } from '#components/print/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Choice } from '#components/ui/choice.tsx'
import { PAPER_MM, PAPERS, type Paper } from '#lib/paper/page/papers.ts'

interface PaperScreenProps {
  readonly title: string
  readonly paper: Paper
  readonly onPaper: (paper: Paper) => void
  /** How many there are; 0 while there is nothing to print. */
  readonly pages: number
  readonly links: ReactNode
  /** What is wrong with what is shown; null: nothing. */
  readonly note: string | null
  readonly children: ReactNode
}

/** A paper on the screen: its pages as they will be printed, and above them how they are. */
export function PaperScreen({
  title,
  paper,
  onPaper,
  pages,
  links,
  note,
  children,
}: PaperScreenProps) {
  const { frame: words } = usePaperWords()
  return (
    <main
      data-paper={paper}
      className={styles.screen}
      style={{ '--paper-mm': PAPER_MM[paper].width } as CSSProperties}
    >
      <header className={styles.bar}>
        <h1>{title}</h1>
        <Choice
          legend={words.size}
          isBare
          ways={PAPERS.map((id) => ({ id, label: words.papers[id] }))}
          chosen={paper}
          onChoose={onPaper}
        />
        <Button
          kind="main"
          disabled={pages === 0}
          sub={pages > 0 ? words.pages(pages) : undefined}
          onClick={() => window.print()}
        >
          {words.print}
        </Button>
        <nav>{links}</nav>
        <p>{words.how}</p>
      </header>
      <div role="status">{note !== null && <p className={styles.note}>{note}</p>}</div>
      <div className={styles.pages} data-aside="">
        {children}
      </div>
    </main>
  )
}
