import { useState } from 'react'
import styles from '#components/assembly/panels.module.css'
import { Connection } from '#components/live/connection.tsx'
import type { MadeBuild } from '#lib/views/assembly.ts'
import { assemblyEn as say } from '#lib/words/assembly-en.ts'

/** A finish that was a mistake: which build, and whether the food was made. */
export function TakeBackPanel({
  made,
  busy,
  onTakeBack,
  onClose,
}: {
  readonly made: readonly MadeBuild[]
  readonly busy: boolean
  readonly onTakeBack: (build: MadeBuild, wasMade: boolean) => void
  readonly onClose: () => void
}) {
  const [name, setName] = useState<string | null>(null)
  const build = made.find((one) => one.name === name)
  return (
    <section className={styles.takeBack} aria-labelledby="take-back-title">
      <h1 id="take-back-title" className={styles.question}>
        {build ? say.wasMade(build.name) : made.length > 0 ? say.takeBackWhich : say.nothingMade}
      </h1>
      {build ? (
        <div className={styles.answers}>
          <button type="button" disabled={busy} onClick={() => onTakeBack(build, true)}>
            <b>{say.wasMadeYes}</b>
            <span>{say.wasMadeYesThen}</span>
          </button>
          <button type="button" disabled={busy} onClick={() => onTakeBack(build, false)}>
            <b>{say.wasMadeNo}</b>
            <span>{say.wasMadeNoThen}</span>
          </button>
        </div>
      ) : (
        <ul className={styles.made}>
          {made.map((one) => (
            <li key={one.name}>
              <button type="button" onClick={() => setName(one.name)}>
                <b>{say.takeBackOne(one.name)}</b>
                <span>{one.item}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
      <div className={styles.link}>
        <Connection />
      </div>
      <button type="button" className={styles.close} onClick={onClose}>
        {say.close}
      </button>
    </section>
  )
}
