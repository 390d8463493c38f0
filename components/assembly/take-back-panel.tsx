import { useState } from 'react'
import styles from '#components/assembly/panels.module.css'
import { useAssemblyWords } from '#components/assembly/words.tsx'
import { Connection } from '#components/live/connection.tsx'
import { Button } from '#components/ui/button.tsx'
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
    <section className={styles.panel} aria-labelledby="take-back-title">
      <h1 id="take-back-title" className={styles.question}>
        {build
          ? words.wasMade(build.name)
          : made.length > 0
            ? words.takeBackWhich
            : words.nothingMade}
      </h1>
      {build ? (
        <div className={`${styles.middle} ${styles.answers}`}>
          <Button
            size="large"
            disabled={busy}
            sub={words.wasMadeYesThen}
            onClick={() => onTakeBack(build, true)}
          >
            {words.wasMadeYes}
          </Button>
          <Button
            size="large"
            disabled={busy}
            sub={words.wasMadeNoThen}
            onClick={() => onTakeBack(build, false)}
          >
            {words.wasMadeNo}
          </Button>
        </div>
      ) : (
        <ul className={styles.made}>
          {made.map((one) => (
            <li key={one.name}>
              <Button
                size="large"
                sub={one.elsewhere === null ? one.item : words.wasMadeAt(one.elsewhere)}
                onClick={() => setName(one.name)}
              >
                {words.takeBackOne(one.name)}
              </Button>
            </li>
          ))}
        </ul>
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
