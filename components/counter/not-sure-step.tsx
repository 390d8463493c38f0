import styles from '#components/counter/not-sure.module.css'
import { useCounterWords } from '#components/counter/words.tsx'
import { Button } from '#components/ui/button.tsx'
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
      <p className={styles.aloud}>{words.stopSay}</p>
      <p>{words.caution}</p>
      <div>
        <Button kind="main" size="large" onClick={() => tap({ act: 'ask-again' })}>
          {words.askAgain}
        </Button>
        <Button onClick={() => tap({ act: 'start-over' })}>{words.startOver}</Button>
      </div>
    </section>
  )
}
