import { type ReactNode, useMemo, useState } from 'react'
import {
  type Copies,
  copiesOf,
  type Group,
  LabelChooser,
} from '#components/print/labels/label-chooser.tsx'
import { LabelPageDrawn, type PrintedFace } from '#components/print/labels/label-page.tsx'
import { StockPanel } from '#components/print/labels/stock-panel.tsx'
import { usePrintSize } from '#components/print/labels/use-print-size.ts'
import { useStock } from '#components/print/labels/use-stock.ts'
import { PrintScreen } from '#components/print/print-screen.tsx'
import { usePaperWords } from '#components/print/words.tsx'
import { labelFaces, rollHeight } from '#lib/paper/labels/face-layout.ts'
import { labelPages } from '#lib/paper/labels/label-stock.ts'
import { markedFaces } from '#lib/paper/labels/printed-mark.ts'
import { PAPER_MM, type Paper } from '#lib/paper/page/papers.ts'

interface LabelsBoardProps {
  readonly title: string
  readonly groups: readonly Group[]
  /** Of what, and when it was printed: in the margin of each sheet. */
  readonly head: readonly string[]
  /** The same shorter, on each label of a roll, which has no margin. */
  readonly mark: string
  readonly usual: Paper
  readonly links: ReactNode
  readonly note: string | null
}

/** Labels chosen, laid out on the paper that is there, and printed in one tap. */
export function LabelsBoard({ title, groups, head, mark, usual, links, note }: LabelsBoardProps) {
  const { frame, labels: words } = usePaperWords()
  const now = useStock(usual)
  const [chosen, setChosen] = useState<Copies>({})
  const { stock, first, offset } = now
  const printed = useMemo(
    () =>
      groups
        .flatMap(({ labels }) => labels)
        .flatMap((one) => ({ ...one, count: copiesOf(one, chosen) }))
        .filter(({ count }) => count > 0),
    [groups, chosen],
  )
  const height = useMemo(
    () =>
      stock.height ??
      rollHeight(
        printed.map(({ texts }) => ({ ...texts, about: `${texts.about} · ${mark}` })),
        stock.width,
      ),
    [stock, printed, mark],
  )
  const { pages, unmarked } = useMemo(() => {
    let bare = 0
    const faces = printed.flatMap(({ id, texts, count }): readonly PrintedFace[] => {
      const size = { width: stock.width, height }
      const { faces: own, isMarked } =
        stock.kind === 'roll'
          ? markedFaces(texts, mark, size)
          : { faces: labelFaces(texts, size), isMarked: true }
      if (!isMarked) bare += count
      return Array.from({ length: count }, (_, copy) =>
        own.map((face) => ({ ...face, key: `${id} ${copy} ${face.nth}` })),
      ).flat()
    })
    return { pages: labelPages(faces, stock, { first, offset, height }), unmarked: bare }
  }, [printed, stock, height, first, offset, mark])
  usePrintSize(stock.kind === 'roll' ? { width: stock.width, height } : null)
  const labels = pages.reduce((sum, page) => sum + page.labels.length, 0)
  return (
    <PrintScreen
      title={title}
      page={stock.kind === 'sheet' ? stock.paper : 'roll'}
      width={stock.kind === 'sheet' ? PAPER_MM[stock.paper].width : stock.width}
      pages={pages.length}
      count={`${words.labels(labels)}, ${frame.pages(pages.length)}`}
      links={links}
      note={
        note ??
        (groups.length > 0 && labels === 0
          ? words.nothingChosen
          : unmarked > 0
            ? words.noMark(unmarked)
            : null)
      }
      aside={
        <>
          <LabelChooser groups={groups} chosen={chosen} onChoose={setChosen} />
          <StockPanel now={now} />
        </>
      }
    >
      {pages.map((page, at) => {
        const name = frame.page(at + 1, pages.length)
        return (
          <LabelPageDrawn
            // biome-ignore lint/suspicious/noArrayIndexKey: a page has no name but its number
            key={at}
            stock={stock}
            page={page}
            height={height}
            name={name}
            head={[...head, name].join(' · ')}
          />
        )
      })}
    </PrintScreen>
  )
}
