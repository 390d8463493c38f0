import type { ReactNode } from 'react'
import styles from '#components/assembly/assembly.module.css'
import { QueueStrip } from '#components/assembly/build-foot.tsx'
import { useAssemblyWords } from '#components/assembly/words.tsx'
import type { Room } from '#components/device/use-device.ts'
import { Line } from '#components/line/line.tsx'
import type { InQueue } from '#lib/rooms/making/views/now-build.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** Nothing to make here: the line at rest, and what other screens make. */
export function IdleLine({
  station,
  made,
  queue,
  room,
  signs,
  told,
  tools,
  onChoose,
}: {
  readonly station: StationDocument
  readonly made: number
  readonly queue: readonly InQueue[]
  readonly room: Room
  readonly signs: ReactNode
  readonly told: ReactNode
  readonly tools: ReactNode
  readonly onChoose: (name: string) => void
}) {
  const words = useAssemblyWords()
  return (
    <div className={styles.screen}>
      <header className={styles.idleTop}>{signs}</header>
      {told}
      <div className={styles.idleWords}>
        <h1>{words.idle}</h1>
        <p>{words.idleMade(made)}</p>
      </div>
      <div className={styles.idleLine}>
        <Line
          station={station}
          label={words.line}
          wrap={room === 'phone' ? 'by-well' : 'never'}
          renderPan={(_, component) => (
            <div className={styles.idlePan}>
              {component.short.map((line) => (
                <span key={line}>{line} </span>
              ))}
            </div>
          )}
        />
      </div>
      <div className={styles.idleFoot}>
        {queue.length > 0 ? <QueueStrip queue={queue} room={room} onChoose={onChoose} /> : <span />}
        {tools}
      </div>
    </div>
  )
}
