import { useState } from 'react'
import styles from '#components/assembly/panels.module.css'
import { useAssemblyWords } from '#components/assembly/words.tsx'
import { Connection } from '#components/live/connection.tsx'
import type { MadeBuild } from '#lib/rooms/making/views/assembly.ts'

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
  const words = useAssemblyWords()
  const [name, setName] = useState<string | null>(null)
  const build = made.find((one) => one.name === name)
  return (
    <section className={styles.takeBack} aria-labelledby="take-back-title">
      <h1 id="take-back-title" className={styles.question}>
        {build
          ? words.wasMade(build.name)
          : made.length > 0
            ? words.takeBackWhich
            : words.nothingMade}
      </h1>
      {build ? (
        <div className={styles.answers}>
          <button type="button" disabled={busy} onClick={() => onTakeBack(build, true)}>
            <b>{words.wasMadeYes}</b>
            <span>{words.wasMadeYesThen}</span>
          </button>
          <button type="button" disabled={busy} onClick={() => onTakeBack(build, false)}>
            <b>{words.wasMadeNo}</b>
            <span>{words.wasMadeNoThen}</span>
          </button>
        </div>
      ) : (
        <ul className={styles.made}>
          {made.map((one) => (
            <li key={one.name}>
              <button type="button" onClick={() => setName(one.name)}>
                <b>{words.takeBackOne(one.name)}</b>
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
        {words.close}
      </button>
    </section>
  )
}
