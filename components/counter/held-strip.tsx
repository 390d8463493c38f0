import styles from '#components/counter/counter.module.css'
import { useCounterWords } from '#components/counter/words.tsx'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import { heldNow, shortNow } from '#lib/rooms/orders/views/tickets-to-change.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName } from '#lib/service/tickets.ts'

/** Builds that can't go on, by number: held ones, guests to be found, and what the pans can't fill. */
export function HeldStrip({
  state,
  tap,
}: {
  readonly state: RunningState
  readonly tap: (act: Act) => void
}) {
  const words = useCounterWords()
  const { builds, find } = heldNow(state)
  const short = shortNow(state)
  if (builds.length + find.length + short.length === 0) return null
  return (
    <div className={styles.cameBack} role="alert">
      {find.length > 0 && (
        <p className={styles.find}>
          <strong>
            {words.needs.findNow(find.map(({ ticket, letter }) => buildName(ticket, letter)))}
          </strong>
        </p>
      )}
      {builds.length > 0 && (
        <p>
          <strong>{words.needs.heldNow(builds)}</strong>
        </p>
      )}
      {short.length > 0 && (
        <p>
          <strong>{words.ranShort.shortNow(short)}</strong>
        </p>
      )}
      <button type="button" className={styles.button} onClick={() => tap({ act: 'tickets' })}>
        {words.needs.see}
      </button>
    </div>
  )
}
