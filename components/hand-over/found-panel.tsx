import styles from '#components/hand-over/panels.module.css'
import { useHandOverWords } from '#components/hand-over/words.tsx'
import { Connection } from '#components/live/connection.tsx'
import type { Kept } from '#lib/rooms/shelf/views/hand-over.ts'

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
  const words = useHandOverWords()
  return (
    <section className={styles.panel} aria-labelledby="found-title">
      <h1 id="found-title" className={styles.title}>
        {words.findQuestion(kept.name)}
      </h1>
      <div className={styles.link}>
        <Connection />
      </div>
      <p className={styles.alone}>{words.sayWhyHeld(kept.why)}</p>
      <p className={styles.keepNow}>{words.findInCharge}</p>
      <div className={styles.choices}>
        <button
          type="button"
          className={styles.other}
          disabled={busy}
          onClick={() => onFound(true)}
        >
          <b>{words.foundBack}</b>
          <span>{words.foundBackThen}</span>
        </button>
        <button
          type="button"
          className={styles.other}
          disabled={busy}
          onClick={() => onFound(false)}
        >
          <b>{words.foundTold}</b>
          <span>{words.foundToldThen}</span>
        </button>
      </div>
      <button type="button" className={styles.back} onClick={onBack}>
        {words.notYet}
      </button>
    </section>
  )
}
