import type { CSSProperties } from 'react'
import styles from '#components/print/print.module.css'
import { lineMm, type PlacedText } from '#lib/paper/page/fit-text.ts'
import type { Box } from '#lib/paper/page/papers.ts'

/** So many millimetres of paper: true ones in print, smaller where the window is. */
export const onPage = (mm: number): string => `calc(var(--u) * ${mm.toFixed(3)})`

export const boxStyle = ({ x, y, width, height }: Box): CSSProperties => ({
  left: onPage(x),
  top: onPage(y),
  width: onPage(width),
  height: onPage(height),
})

/** A text with its lines as they were laid; its box is marked, so that a test can hold it against its ink. */
export function Placed({
  text,
  className,
}: {
  readonly text: PlacedText
  readonly className?: string
}) {
  return (
    <p
      className={className === undefined ? styles.text : `${styles.text} ${className}`}
      data-text=""
      data-pt={text.pt}
      data-weight={text.weight}
      style={{
        ...boxStyle(text),
        fontSize: onPage((text.pt * 25.4) / 72),
        lineHeight: onPage(lineMm(text.pt)),
      }}
    >
      {text.lines.map((line, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a line has no name but its place
        <span key={at}>{line} </span>
      ))}
    </p>
  )
}
