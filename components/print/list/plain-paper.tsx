import { type ReactNode, useState } from 'react'
import { ListBody } from '#components/print/list/list-body.tsx'
import { PaperPage } from '#components/print/paper-page.tsx'
import { PaperScreen } from '#components/print/paper-screen.tsx'
import { usePaperWords } from '#components/print/words.tsx'
import { type ListAsked, listPages } from '#lib/paper/page/list-layout.ts'
import type { Paper } from '#lib/paper/page/papers.ts'

interface PlainPaperProps {
  readonly title: string
  readonly station: string
  readonly facts: readonly string[]
  /** null: it is real. */
  readonly demo: string | null
  readonly foot: string
  readonly usual: Paper
  readonly shares: ListAsked['shares']
  readonly headings: ListAsked['headings']
  /** null: there is nothing to print yet. */
  readonly sections: ListAsked['sections'] | null
  readonly links: ReactNode
  readonly note: string | null
}

/** A paper of rows in columns that is of no plan. */
export function PlainPaper(props: PlainPaperProps) {
  const { title, station, facts, demo, foot, usual, sections, links, note } = props
  const { shares, headings } = props
  const { frame: words } = usePaperWords()
  const [chosen, setChosen] = useState<Paper | null>(null)
  const paper = chosen ?? usual
  const pages = sections === null ? [] : listPages(paper, { shares, headings, sections, lead: 0 })
  return (
    <PaperScreen
      title={title}
      paper={paper}
      onPaper={setChosen}
      pages={pages.length}
      links={links}
      note={note}
    >
      {pages.map((body, at) => (
        <PaperPage
          // biome-ignore lint/suspicious/noArrayIndexKey: a page has no name but its number
          key={at}
          paper={paper}
          frame={{
            ...{ title, station, facts, demo, foot },
            ...{ signed: [], page: words.page(at + 1, pages.length) },
          }}
        >
          <ListBody page={body} />
        </PaperPage>
      ))}
    </PaperScreen>
  )
}
