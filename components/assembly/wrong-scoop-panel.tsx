import { useState } from 'react'
import styles from '#components/assembly/panels.module.css'
import { useNarrow } from '#components/device/use-device.ts'
import { Line } from '#components/line/line.tsx'
import { Connection } from '#components/live/connection.tsx'
import { componentOf, findPan } from '#lib/menu/find.ts'
import type { StationDocument } from '#lib/menu/station-document.ts'
import { assemblyEn as say } from '#lib/words/assembly-en.ts'

/** Another component's scoop went into a pan: which pan, and whose scoop. */
export function WrongScoopPanel({
  station,
  busy,
  onSoiled,
  onClose,
}: {
  readonly station: StationDocument
  readonly busy: boolean
  readonly onSoiled: (pan: string, by: string) => void
  readonly onClose: () => void
}) {
  const [panId, setPanId] = useState<string | null>(null)
  const narrow = useNarrow()
  const pan = panId === null ? undefined : findPan(station, panId)
  const question = pan
    ? say.wrongScoopOf(componentOf(station, pan.component).name)
    : say.wrongScoopIn
  return (
    <section className={styles.takeBack} aria-labelledby="wrong-scoop-title">
      <h1 id="wrong-scoop-title" className={styles.question}>
        {question}
      </h1>
      <p className={styles.then}>{pan ? say.wrongScoopThen : say.wrongScoopGloves}</p>
      <div className={styles.scoops}>
        <Line
          key={panId}
          station={station}
          label={question}
          wrap={narrow ? 'by-well' : 'never'}
          renderPan={(one, component) => (
            <button
              type="button"
              disabled={busy || component.id === pan?.component}
              onClick={() => (pan ? onSoiled(pan.id, component.id) : setPanId(one.id))}
            >
              {component.name}
            </button>
          )}
        />
      </div>
      <div className={styles.link}>
        <Connection />
      </div>
      <button type="button" className={styles.close} onClick={onClose}>
        {say.close}
      </button>
    </section>
  )
}
