import styles from '#components/print/labels/labels.module.css'
import { boxStyle, onPage, Placed } from '#components/print/placed.tsx'
import print from '#components/print/print.module.css'
import type { Face } from '#lib/paper/labels/face-layout.ts'
import type { LabelPage, Stock } from '#lib/paper/labels/label-stock.ts'
import { fitted, heightMm } from '#lib/paper/page/fit-text.ts'
import { type Box, frameOf, PAPER_MM } from '#lib/paper/page/papers.ts'

export type PrintedFace = Face & { readonly key: string }

/** In the margin above the first label, where there is one. */
const MARGIN_LINE = 5

const moved = <One extends Box>(one: One, by: Box): One => ({
  ...one,
  x: one.x + by.x,
  y: one.y + by.y,
})

function Label({ face, at, isCut }: { face: PrintedFace; at: Box; isCut: boolean }) {
  return (
    <article data-label={face.id} data-nth={face.nth}>
      <span
        className={isCut ? styles.cut : styles.edge}
        data-label-box=""
        style={boxStyle(at)}
        aria-hidden="true"
      />
      {face.bars.map((bar) => (
        <span
          key={bar.x}
          className={styles.bar}
          style={boxStyle(moved(bar, at))}
          aria-hidden="true"
        />
      ))}
      {face.pans.map((pan) => (
        <span
          key={pan.x}
          className={styles.pan}
          data-own={pan.isOwn || undefined}
          style={boxStyle(moved(pan, at))}
          aria-hidden="true"
        />
      ))}
      {face.texts.map((text) => (
        <Placed key={`${text.x} ${text.y}`} text={moved(text, at)} />
      ))}
      {face.blanks.map((blank) => (
        <span
          key={`${blank.x} ${blank.y}`}
          className={print.rule}
          data-blank={blank.of}
          style={boxStyle(moved(blank, at))}
        />
      ))}
    </article>
  )
}

/** One page of labels: a sheet, or a roll's one. */
export function LabelPageDrawn({
  stock,
  page: { labels },
  height,
  name,
  head,
}: {
  readonly stock: Stock
  readonly page: LabelPage<PrintedFace>
  /** Of a roll's label, millimetres. */
  readonly height: number
  readonly name: string
  /** What a sheet is, in its margin. */
  readonly head: string
}) {
  const size = stock.kind === 'sheet' ? PAPER_MM[stock.paper] : { width: stock.width, height }
  const isCut = stock.kind === 'sheet' && stock.isCut
  const width = stock.kind === 'sheet' ? frameOf(stock.paper).head.width : 0
  const set = fitted({ text: head, pt: 8 }, width)
  return (
    <section
      className={print.page}
      data-paper={stock.kind === 'sheet' ? stock.paper : 'roll'}
      aria-label={name}
      style={{ width: onPage(size.width), height: onPage(size.height) }}
    >
      {stock.kind === 'sheet' && set.lines.length === 1 && (
        <Placed
          text={{
            ...set,
            x: frameOf(stock.paper).head.x,
            y: Math.max(1, Math.min(stock.top, ...labels.map(({ at }) => at.y)) - MARGIN_LINE),
            width,
            height: heightMm(set),
          }}
        />
      )}
      {labels.map((one) => (
        <Label key={one.key} face={one} at={one.at} isCut={isCut} />
      ))}
    </section>
  )
}
