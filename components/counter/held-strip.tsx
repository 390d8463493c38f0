import styles from '#components/counter/counter.module.css'
import type { RunningState } from '#lib/service/state.ts'
import { buildName } from '#lib/service/tickets.ts'
import type { Act } from '#lib/views/counter-act.ts'
import { heldNow } from '#lib/views/tickets-to-change.ts'
import { needsEn } from '#lib/words/needs-en.ts'

/** Builds that no longer fit their guests, by number: held ones, and guests to be found. */
export function HeldStrip({
  state,
  tap,
}: {
  readonly state: RunningState
  readonly tap: (act: Act) => void
}) {
  const { builds, find } = heldNow(state)
  if (builds.length === 0 && find.length === 0) return null
  return (
    <div className={styles.cameBack} role="alert">
      {find.length > 0 && (
        <p className={styles.find}>
          <strong>
            {needsEn.findNow(find.map(({ ticket, letter }) => buildName(ticket, letter)))}
          </strong>
        </p>
      )}
      {builds.length > 0 && (
        <p>
          <strong>{needsEn.heldNow(builds)}</strong>
        </p>
      )}
      <button type="button" className={styles.button} onClick={() => tap({ act: 'tickets' })}>
        {needsEn.see}
      </button>
    </div>
  )
}
