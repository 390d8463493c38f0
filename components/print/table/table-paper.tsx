import { type ReactNode, useState } from 'react'
import { PaperPage } from '#components/print/paper-page.tsx'
import { PaperScreen } from '#components/print/paper-screen.tsx'
import { TableBody } from '#components/print/table/table-body.tsx'
import { usePaperWords } from '#components/print/words.tsx'
import type { Paper } from '#lib/paper/page/papers.ts'
import { type Column, type TableRow, tablePages } from '#lib/paper/table/table-layout.ts'

interface TablePaperProps {
  readonly title: string
  readonly station: string
  readonly facts: readonly string[]
  /** null: it is real. */
  readonly demo: string | null
  readonly foot: string
  readonly usual: Paper
  readonly columns: readonly Column[]
  /** null: there is nothing to print yet. */
  readonly rows: readonly TableRow[] | null
  readonly links: ReactNode
  readonly note: string | null
}

/** A paper of rows in columns. */
export function TablePaper(props: TablePaperProps) {
  const { title, station, facts, demo, foot, usual, columns, rows, links, note } = props
  const { frame: words } = usePaperWords()
  const [chosen, setChosen] = useState<Paper | null>(null)
  const paper = chosen ?? usual
  const pages = rows === null ? [] : tablePages(paper, columns, rows)
  return (
    <PaperScreen
      title={title}
      paper={paper}
      onPaper={setChosen}
      pages={pages.length}
      links={links}
      note={note}
    >
      {pages.map((page, at) => (
        <PaperPage
          // biome-ignore lint/suspicious/noArrayIndexKey: a page has no name but its number
          key={at}
          paper={paper}
          frame={{
            title,
            station,
            facts,
            demo,
            signed: [],
            foot,
            page: words.page(at + 1, pages.length),
          }}
        >
          <TableBody page={page} />
        </PaperPage>
      ))}
    </PaperScreen>
  )
}
