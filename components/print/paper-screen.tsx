import type { ReactNode } from 'react'
import { PrintScreen } from '#components/print/print-screen.tsx'
import { usePaperWords } from '#components/print/words.tsx'
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
  /** Beside the pages: what is asked about them. */
  readonly aside?: ReactNode
  readonly isAsideLater?: boolean
  readonly children: ReactNode
}

/** A paper on the screen: its pages as they will be printed, and above them how they are. */
export function PaperScreen({ paper, onPaper, ...rest }: PaperScreenProps) {
  const { frame: words } = usePaperWords()
  return (
    <PrintScreen
      {...rest}
      page={paper}
      width={PAPER_MM[paper].width}
      on={
        <Choice
          legend={words.size}
          isBare
          ways={PAPERS.map((id) => ({ id, label: words.papers[id] }))}
          chosen={paper}
          onChoose={onPaper}
        />
      }
    />
  )
}
