import type { Choose } from '#components/job/chosen.ts'
import styles from '#components/pans/cards.module.css'
import { sayTaskShortly } from '#components/pans/task-said.ts'
import type { Tasks } from '#components/pans/use-tasks.ts'
import { usePansWords } from '#components/pans/words.tsx'
import { type PutOff, type Task, taskKey } from '#lib/rooms/advice/views/do-next.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { SaidHere } from '#lib/words/said-here.ts'

const MOST_THEN = 3

const kindOf = (task: Task): string =>
  task.kind === 'fact' ? task.toDo.kind : task.advice.kind === 'safety' ? 'safety' : 'advice'

interface ThenCardProps {
  readonly state: RunningState
  /** What follows the one that is told large. */
  readonly then: readonly Task[]
  /** What was answered with later or no: it stays in sight. */
  readonly putOff: readonly PutOff[]
  readonly here: SaidHere
  readonly tasks: Tasks
  /** When the rush that is going on ends; null where there is none. */
  readonly rushUntil: number | null
  readonly choose: Choose
}

/** What comes after that, a tap each, and the ways to what is done seldom. */
export function ThenCard({ state, then, putOff, here, tasks, rushUntil, choose }: ThenCardProps) {
  const words = usePansWords()
  return (
    <section className={styles.card} data-kind="then">
      <h2 className={styles.label}>
        {words.afterThat}
        {then.length > MOST_THEN && `, ${words.more(then.length - MOST_THEN)}`}
        {rushUntil !== null && (
          <span className={styles.rush}>{words.advice.rush(here.time(rushUntil))}</span>
        )}
      </h2>
      {then.length + putOff.length === 0 ? (
        <p className={styles.why}>{words.nothingElse}</p>
      ) : (
        <ul className={styles.then}>
          {then.slice(0, MOST_THEN).map((task) => (
            <li key={taskKey(task)}>
              <button type="button" data-kind={kindOf(task)} onClick={() => void tasks.go(task)}>
                {sayTaskShortly(words, state, task, here)}
              </button>
            </li>
          ))}
          {putOff.slice(0, Math.max(0, MOST_THEN - then.length)).map((one) => (
            <li key={one.key} className={styles.putOff}>
              {words.calm.putOffSaid(one, here)}
            </li>
          ))}
        </ul>
      )}
      <nav className={styles.ways} aria-label={words.first.ways}>
        <button type="button" onClick={() => choose({ kind: 'in-charge' })}>
          {words.first.inCharge}
        </button>
        <button type="button" onClick={() => choose({ kind: 'labels', ingredient: null })}>
          {words.first.labelChanged}
        </button>
        <a href="/sheet">{words.first.toSheet}</a>
      </nav>
    </section>
  )
}
