import styles from '#components/counter/counter.module.css'
import type { Act } from '#lib/views/counter-act.ts'
import { counter } from '#lib/words/counter-en.ts'

/** A guest who isn't sure: no order, but a person to call. */
export function NotSureStep({ tap }: { readonly tap: (act: Act) => void }) {
  return (
    <section className={styles.stop} aria-labelledby="not-sure">
      <h2 id="not-sure" tabIndex={-1} data-step="">
        {counter.stopTitle}
      </h2>
      <p>{counter.stopWhy}</p>
      <p className={styles.sayAloud}>{counter.stopSay}</p>
      <p>{counter.caution}</p>
      <div className={styles.row}>
        <button type="button" className={styles.main} onClick={() => tap({ act: 'ask-again' })}>
          {counter.askAgain}
        </button>
        <button type="button" className={styles.button} onClick={() => tap({ act: 'start-over' })}>
          {counter.startOver}
        </button>
      </div>
    </section>
  )
}
