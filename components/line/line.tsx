import type { ReactNode } from 'react'
import styles from '#components/line/line.module.css'
import { componentOf } from '#lib/station/find.ts'
import type { Component, Pan, StationDocument } from '#lib/station/station-document.ts'

/** How wide a pan stands against the others; `sliver` keeps its place and no more. */
export type PanWidth = 'wide' | 'even' | 'sliver'

interface LineProps {
  readonly station: StationDocument
  readonly label: string
  /** `by-well` wraps whole wells onto more rows on a phone, and on nothing wider. */
  readonly wrap?: 'never' | 'by-well'
  /** The screen draws the wells itself, and lays the line its own way. */
  readonly className?: string
  readonly widthOf?: (pan: Pan) => PanWidth
  readonly renderPan: (pan: Pan, component: Component) => ReactNode
}

/** The row of pans as it stands in the room: the picture that every screen shares. */
export function Line({
  station,
  label,
  wrap = 'never',
  className,
  widthOf = () => 'even',
  renderPan,
}: LineProps) {
  return (
    <ol
      className={`${styles.line} ${wrap === 'by-well' ? styles.wraps : ''} ${className ?? ''}`}
      aria-label={label}
    >
      {station.line.wells.map((well, index) => (
        <li
          key={well.id}
          className={styles.well}
          style={{
            // What a phone lays between the wells is put behind one of them by its order.
            order: index,
            flexGrow: well.pans.filter((pan) => widthOf(pan) !== 'sliver').length,
            flexShrink: 1,
          }}
        >
          <ol className={styles.pans}>
            {well.pans.map((pan) => (
              <li key={pan.id} className={styles.place} data-pan={pan.id} data-width={widthOf(pan)}>
                {renderPan(pan, componentOf(station, pan.component))}
              </li>
            ))}
          </ol>
        </li>
      ))}
    </ol>
  )
}
