import { boxStyle, Placed } from '#components/print/placed.tsx'
import styles from '#components/print/table/table.module.css'
import type { TablePage } from '#lib/paper/table/table-layout.ts'

/** The body of one page: its headings, and its rows with a line below each. */
export function TableBody({ page }: { readonly page: TablePage }) {
  return (
    <>
      {page.headings.map((text) => (
        <Placed key={text.x} text={text} />
      ))}
      {page.rows.map(({ box, isHeading, texts }) => (
        <article key={box.y} data-row="">
          <span
            className={styles.row}
            data-heading={isHeading || undefined}
            style={boxStyle(box)}
            aria-hidden="true"
          />
          {texts.map((text) => (
            <Placed key={`${text.x} ${text.y}`} text={text} />
          ))}
        </article>
      ))}
    </>
  )
}
