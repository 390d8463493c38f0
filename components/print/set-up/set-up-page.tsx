import { boxStyle, Placed } from '#components/print/placed.tsx'
import styles from '#components/print/set-up/set-up.module.css'
import { usePaperWords } from '#components/print/words.tsx'
import { fitted, heightMm } from '#lib/paper/page/fit-text.ts'
import { PAPER_MM, type Paper } from '#lib/paper/page/papers.ts'
import type { Headings } from '#lib/paper/set-up/row-layout.ts'
import type { PlacedWell, SetUpPage } from '#lib/paper/set-up/set-up-layout.ts'

const COLUMNS: readonly (keyof Headings)[] = ['pan', 'tool', 'load', 'loaded', 'read', 'initials']

function Well({ well: { label, opening, pans, rows } }: { readonly well: PlacedWell }) {
  return (
    <>
      <Placed text={label} />
      <div className={styles.opening} style={boxStyle(opening)} aria-hidden="true" />
      {pans.map(({ number, box, texts }) => (
        <div key={number} aria-hidden="true">
          <span className={styles.pan} data-pan-box={number} style={boxStyle(box)} />
          {texts.map((text) => (
            <Placed key={text.y} text={text} className={styles.face ?? ''} />
          ))}
        </div>
      ))}
      {rows.map(({ number, box, tick, texts, blanks }) => (
        <article key={number} data-row={number}>
          <span className={styles.row} data-row-box="" style={boxStyle(box)} />
          <span className={styles.tick} style={boxStyle(tick)} />
          {texts.map((text) => (
            <Placed key={`${text.x} ${text.y}`} text={text} />
          ))}
          {blanks.map((blank) => (
            <span
              key={blank.of}
              className={styles.blank}
              data-blank={blank.of}
              style={boxStyle(blank)}
            />
          ))}
        </article>
      ))}
    </>
  )
}

/** The body of one page: the part of the line that stands on it, and its pans' rows. */
export function SetUpBody({ paper, page }: { readonly paper: Paper; readonly page: SetUpPage }) {
  const { setUp: words } = usePaperWords()
  const { width, height } = PAPER_MM[paper]
  return (
    <>
      {COLUMNS.map((column) => {
        const box = page.headings[column]
        const set = fitted({ text: words.columns[column], pt: 9, weight: 'bold' }, box.width)
        return <Placed key={column} text={{ ...set, ...box, height: heightMm(set) }} />
      })}
      <svg className={styles.leaders} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
        {page.wells.flatMap(({ leaders }) =>
          leaders.map((points) => <polyline key={points.join(' ')} points={points.join(' ')} />),
        )}
      </svg>
      {page.wells.map((well) => (
        <Well key={well.opening.y} well={well} />
      ))}
    </>
  )
}
