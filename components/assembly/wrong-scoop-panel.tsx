import { useState } from 'react'
import styles from '#components/assembly/panels.module.css'
import { useAssemblyWords } from '#components/assembly/words.tsx'
import { useNarrow } from '#components/device/use-device.ts'
import { Line } from '#components/line/line.tsx'
import { Connection } from '#components/live/connection.tsx'
import { Button } from '#components/ui/button.tsx'
import { componentOf, findPan } from '#lib/station/find.ts'
import type { Pan, StationDocument } from '#lib/station/station-document.ts'

/** Another component's scoop went into a pan: which pan, and whose scoop. */
export function WrongScoopPanel({
  station,
  hasBackup,
  busy,
  onSoiled,
  onClose,
}: {
  readonly station: StationDocument
  /** Whether a protected back-up pan of a component holds something. */
  readonly hasBackup: (component: string) => boolean
  readonly busy: boolean
  readonly onSoiled: (pan: Pan, by: string, backup: boolean) => void
  readonly onClose: () => void
}) {
  const words = useAssemblyWords()
  const [panId, setPanId] = useState<string | null>(null)
  const [by, setBy] = useState<string | null>(null)
  const narrow = useNarrow()
  const pan = panId === null ? undefined : findPan(station, panId)
  const name = pan ? componentOf(station, pan.component).name : ''
  const question = !pan
    ? words.wrongScoopIn
    : by === null
      ? words.wrongScoopOf(name)
      : words.wrongScoopWhich(name)
  const choose = (component: string) => {
    if (!pan) return
    if (!hasBackup(pan.component)) onSoiled(pan, component, false)
    else setBy(component)
  }
  return (
    <section className={styles.panel} aria-labelledby="wrong-scoop-title">
      <h1 id="wrong-scoop-title" className={styles.question}>
        {question}
      </h1>
      <p className={styles.then}>{pan ? words.wrongScoopThen : words.wrongScoopGloves}</p>
      {pan && by !== null ? (
        <div className={`${styles.middle} ${styles.answers}`}>
          {[false, true].map((backup) => (
            <Button
              key={String(backup)}
              size="large"
              disabled={busy}
              onClick={() => onSoiled(pan, by, backup)}
            >
              {backup ? words.wrongScoopBackup : words.wrongScoopLine}
            </Button>
          ))}
        </div>
      ) : (
        <div className={`${styles.middle} ${styles.scoops}`}>
          <Line
            key={panId}
            station={station}
            label={question}
            wrap={narrow ? 'by-well' : 'never'}
            renderPan={(one, component) => (
              <button
                type="button"
                disabled={busy || component.id === pan?.component}
                onClick={() => (pan ? choose(component.id) : setPanId(one.id))}
              >
                {component.short.join(' ')}
              </button>
            )}
          />
        </div>
      )}
      <div className={styles.link}>
        <Connection />
      </div>
      <Button size="large" className={styles.close} onClick={onClose}>
        {words.close}
      </Button>
    </section>
  )
}
