import type { ReactNode } from 'react'
import styles from '#components/assembly/assembly.module.css'
import { useAssemblyWords } from '#components/assembly/words.tsx'
import { Awake } from '#components/device/awake-notice.tsx'
import { useNarrow } from '#components/device/use-device.ts'
import { Line } from '#components/line/line.tsx'
import { Connection } from '#components/live/connection.tsx'
import type { StationDocument } from '#lib/station/station-document.ts'

/** Nothing to make: the line at rest. */
export function IdleLine({
  station,
  made,
  children,
}: {
  readonly station: StationDocument
  readonly made: number
  readonly children: ReactNode
}) {
  const words = useAssemblyWords()
  const narrow = useNarrow()
  return (
    <div className={styles.screen} data-idle="">
      <header className={styles.idleTop}>
        <Awake />
        <Connection />
      </header>
      <div className={styles.idleWords}>
        <h1>{words.idle}</h1>
        <p>{words.idleMade(made)}</p>
      </div>
      <div className={styles.idleLine}>
        <Line
          station={station}
          label={words.line}
          wrap={narrow ? 'by-well' : 'never'}
          renderPan={(_, component) => (
            <div className={styles.idlePan}>
              {component.short.map((line) => (
                <span key={line}>{line} </span>
              ))}
            </div>
          )}
        />
      </div>
      {children}
    </div>
  )
}
