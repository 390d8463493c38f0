import styles from '#components/hand-over/panels.module.css'
import { Connection } from '#components/live/connection.tsx'
import type { Kept } from '#lib/views/hand-over.ts'
import { handOverEn as say } from '#lib/words/hand-over-en.ts'
import { sayWhyHeld } from '#lib/words/held-en.ts'

/** The guest of a handed-over build is found: whether the food came back. */
export function FoundPanel({
  kept,
  busy,
  onFound,
  onBack,
}: {
  readonly kept: Kept
  readonly busy: boolean
  readonly onFound: (foodIsBack: boolean) => void
  readonly onBack: () => void
}) {
  return (
    <section className={styles.panel} aria-labelledby="found-title">
      <h1 id="found-title" className={styles.title}>
        {say.findQuestion(kept.name)}
      </h1>
      <div className={styles.link}>
        <Connection />
      </div>
      <p className={styles.alone}>{sayWhyHeld(kept.why)}</p>
      <p className={styles.keepNow}>{say.findInCharge}</p>
      <div className={styles.choices}>
        <button
          type="button"
          className={styles.other}
          disabled={busy}
          onClick={() => onFound(true)}
        >
          <b>{say.foundBack}</b>
          <span>{say.foundBackThen}</span>
        </button>
        <button
          type="button"
          className={styles.other}
          disabled={busy}
          onClick={() => onFound(false)}
        >
          <b>{say.foundKept}</b>
          <span>{say.foundKeptThen}</span>
        </button>
      </div>
      <button type="button" className={styles.back} onClick={onBack}>
        {say.notYet}
      </button>
    </section>
  )
}
