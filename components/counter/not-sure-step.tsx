import styles from '#components/counter/counter.module.css'
import { useCounterWords } from '#components/counter/words.tsx'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'

/** A guest who isn't sure: no order, but a person to call. */
export function NotSureStep({ tap }: { readonly tap: (act: Act) => void }) {
  const words = useCounterWords()
  return (
    <section className={styles.stop} aria-labelledby="not-sure">
      <h2 id="not-sure" tabIndex={-1} data-step="">
        {words.stopTitle}
      </h2>
      <p>{words.stopWhy}</p>
      <p className={styles.sayAloud}>{words.stopSay}</p>
      <p>{words.caution}</p>
      <div className={styles.row}>
        <button type="button" className={styles.main} onClick={() => tap({ act: 'ask-again' })}>
          {words.askAgain}
        </button>
        <button type="button" className={styles.button} onClick={() => tap({ act: 'start-over' })}>
          {words.startOver}
        </button>
      </div>
    </section>
  )
}
