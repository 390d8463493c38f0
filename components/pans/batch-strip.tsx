import type { Choose } from '#components/job/chosen.ts'
import styles from '#components/pans/batch-strip.module.css'
import { usePansWords } from '#components/pans/words.tsx'
import type { BatchPicture } from '#lib/rooms/food/views/batch-strip.ts'
import type { RunningState } from '#lib/service/state.ts'
import { nameIn } from '#lib/station/name-in.ts'

const MOST_SHOWN = 4

interface BatchStripProps {
  readonly state: RunningState
  readonly batches: readonly BatchPicture[]
  readonly choose: Choose
}

/** Batches under way or ready, most pressing first, and the way to a new one. */
export function BatchStrip({ state, batches, choose }: BatchStripProps) {
  const words = usePansWords()
  const name = nameIn(state.station)
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  const open = ({ id, stage }: BatchPicture) =>
    choose({
      kind: 'food',
      food: stage === 'to-read' ? { task: 'read', what: 'batch', id } : { task: 'batch', id },
    })
  return (
    <section className={styles.strip} aria-label={words.batches.batches}>
      <button
        type="button"
        className={styles.way}
        onClick={() => choose({ kind: 'food', food: { task: 'behind' } })}
      >
        {words.batches.behind}
      </button>
      <ul className={styles.batches}>
        {batches.slice(0, MOST_SHOWN).map((one) => (
          <li key={one.id}>
            <button
              type="button"
              className={styles.batch}
              data-stage={one.stage}
              data-late={one.isLate}
              onClick={() => open(one)}
            >
              <b>{name(one.component)}</b>
              <span>{words.batches.stage(one, time)}</span>
            </button>
          </li>
        ))}
        {batches.length === 0 && <li className={styles.none}>{words.batches.none}</li>}
      </ul>
      {batches.length > MOST_SHOWN && (
        <span className={styles.more}>{words.batches.more(batches.length - MOST_SHOWN)}</span>
      )}
      <button
        type="button"
        className={styles.way}
        onClick={() => choose({ kind: 'food', food: { task: 'start-batch', component: null } })}
      >
        {words.batches.start}
      </button>
    </section>
  )
}
