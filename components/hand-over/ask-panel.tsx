import { useState } from 'react'
import styles from '#components/hand-over/panels.module.css'
import { Connection } from '#components/live/connection.tsx'
import type { OnShelf } from '#lib/views/hand-over.ts'
import { linesOfParts } from '#lib/views/mark.ts'
import { handOverEn as say } from '#lib/words/hand-over-en.ts'
import { markLines } from '#lib/words/service-en.ts'

/** A kept-apart build, shown alone: the guest says what it was kept from, the student compares. */
export function AskPanel({
  build,
  busy,
  onHandOver,
  onBack,
}: {
  readonly build: OnShelf
  readonly busy: boolean
  readonly onHandOver: () => void
  readonly onBack: () => void
}) {
  const [differs, setDiffers] = useState(false)
  return (
    <section className={styles.panel} aria-labelledby="ask-title">
      <h1 id="ask-title" className={styles.name}>
        {build.name}
      </h1>
      <Connection />
      <p className={styles.alone}>{say.alone}</p>
      <div className={styles.ask}>
        <h2>{say.ask}</h2>
        <p className={styles.question}>“{say.question}”</p>
        <p>{say.listen}</p>
      </div>
      <div className={styles.wrap}>
        <b>{build.name}</b>
        {markLines(build.mark).map((line, index) => (
          <span key={line} data-need={index >= linesOfParts(build.mark)}>
            {line}
          </span>
        ))}
      </div>
      {differs ? (
        <p className={styles.keep} role="alert">
          {say.notSameThen}
        </p>
      ) : (
        <div className={styles.choices}>
          <button type="button" className={styles.yes} disabled={busy} onClick={onHandOver}>
            {say.same(build.name)}
          </button>
          <button type="button" className={styles.other} onClick={() => setDiffers(true)}>
            {say.notSame}
          </button>
        </div>
      )}
      <button type="button" className={styles.back} onClick={onBack}>
        {say.back}
      </button>
    </section>
  )
}
