import styles from '#components/print/list/list.module.css'
import { boxStyle, Placed } from '#components/print/placed.tsx'
import type { PlacedStrip } from '#lib/paper/page/line-strip.ts'
import { lineStrip, type StripPan } from '#lib/paper/page/line-strip.ts'
import type { ListPage } from '#lib/paper/page/list-layout.ts'

/** The line as a row of pans; those in `black` are filled. */
export function Strip({
  strip,
  black,
}: {
  readonly strip: PlacedStrip
  readonly black: readonly number[]
}) {
  return (
    <>
      {strip.bars.map((bar) => (
        <span key={bar.x} className={styles.bar} style={boxStyle(bar)} aria-hidden="true" />
      ))}
      {strip.pans.map(({ number, box, texts }) => (
        <span key={number} aria-hidden="true">
          <span
            className={styles.pan}
            data-black={black.includes(number) || undefined}
            style={boxStyle(box)}
          />
          {texts.map((text) => (
            <Placed key={text.y} text={text} className={styles.face ?? ''} />
          ))}
        </span>
      ))}
    </>
  )
}

/** The body of one page of a list: bands, and below each its rows with a box to tick. */
export function ListBody({
  page,
  wells = [],
  blackOf,
}: {
  readonly page: ListPage
  /** The line that is drawn in rows; none where no row has a drawing. */
  readonly wells?: readonly (readonly StripPan[])[]
  readonly blackOf?: (row: string) => readonly number[]
}) {
  return (
    <>
      {page.headings.map((text) => (
        <Placed key={text.x} text={text} />
      ))}
      {page.bands.map(({ box, texts }) => (
        <div key={box.y} data-band="">
          <span className={styles.band} style={boxStyle(box)} />
          {texts.map((text) => (
            <Placed key={text.x} text={text} className={styles.onBand ?? ''} />
          ))}
        </div>
      ))}
      {page.rows.map(({ id, isMore, box, tick, texts, blanks, drawing }) => (
        <article key={`${id} ${box.y}`} data-row={id} data-more={isMore || undefined}>
          <span className={styles.row} data-row-box="" style={boxStyle(box)} />
          {tick && <span className={styles.tick} style={boxStyle(tick)} />}
          {texts.map((text) => (
            <Placed key={`${text.x} ${text.y}`} text={text} />
          ))}
          {blanks.map((blank) => (
            <span
              key={`${blank.x} ${blank.y}`}
              className={styles.blank}
              data-blank={blank.of}
              style={boxStyle(blank)}
            />
          ))}
          {drawing && blackOf && (
            <Strip strip={lineStrip(wells, drawing, false)} black={blackOf(id)} />
          )}
        </article>
      ))}
    </>
  )
}
