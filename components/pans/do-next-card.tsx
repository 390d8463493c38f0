import styles from '#components/pans/cards.module.css'
import type { TaskSaid } from '#components/pans/task-said.ts'
import type { Tasks } from '#components/pans/use-tasks.ts'
import { usePansWords } from '#components/pans/words.tsx'
import { useSettled } from '#components/ui/settled.ts'
import { type Task, taskKey } from '#lib/rooms/advice/views/do-next.ts'

const isGuestsFirst = (task: Task): boolean =>
  task.kind === 'fact' && (task.toDo.kind === 'find' || task.toDo.kind === 'hold')

const isSafety = (task: Task): boolean =>
  task.kind === 'advice' &&
  task.advice.kind === 'safety' &&
  task.advice.reason.why === 'safety' &&
  ['throw-out', 'out-of-limits', 'reading-missed'].includes(task.advice.reason.what)

interface DoNextCardProps {
  /** null: nothing is to be done. */
  readonly task: Task | null
  /** Of the task, or what is said while there is none. */
  readonly said: TaskSaid
  readonly tasks: Tasks
}

/** The one thing to do next, large, with its reason in numbers, and how to answer it. */
export function DoNextCard({ task, said, tasks }: DoNextCardProps) {
  const words = usePansWords()
  const settled = useSettled(task ? taskKey(task) : '')
  const advice = task?.kind === 'advice' && task.advice.kind !== 'safety' ? task.advice : null
  const tap = (act: () => Promise<void>) => () => {
    if (settled()) void act()
  }
  return (
    <section
      className={styles.card}
      data-kind={task ? 'next' : 'calm'}
      data-urgent={task !== null && (isGuestsFirst(task) || isSafety(task))}
    >
      <h2 className={styles.label}>{words.doNext}</h2>
      <p className={styles.title}>{said.title}</p>
      <div className={styles.why}>
        {said.why.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
      {task && (
        <div className={styles.answers}>
          {said.button !== '' && (
            <button
              type="button"
              className={styles.main}
              disabled={tasks.busy}
              onClick={tap(() => tasks.go(task))}
            >
              {said.button}
            </button>
          )}
          {advice && (
            <>
              <button
                type="button"
                className={styles.answer}
                disabled={tasks.busy}
                onClick={tap(() => tasks.answer(advice, 'put-off'))}
              >
                {words.advice.later}
              </button>
              <button
                type="button"
                className={styles.answer}
                disabled={tasks.busy}
                onClick={tap(() => tasks.answer(advice, 'declined'))}
              >
                {words.advice.no}
              </button>
            </>
          )}
        </div>
      )}
    </section>
  )
}
