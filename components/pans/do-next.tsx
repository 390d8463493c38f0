import styles from '#components/pans/do-next.module.css'
import type { PlacedTask } from '#components/pans/placed-tasks.ts'
import type { Tasks } from '#components/pans/use-tasks.ts'
import { usePansWords } from '#components/pans/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { useSettled } from '#components/ui/settled.ts'
import type { Task } from '#lib/rooms/advice/views/do-next.ts'

const isGuestsFirst = (task: Task): boolean =>
  task.kind === 'fact' && ['find', 'hold', 'handed-over'].includes(task.toDo.kind)

const isMissed = (task: Task): boolean =>
  task.kind === 'round' && task.round.places.some(({ why }) => why === 'missed')

const isSafety = (task: Task): boolean =>
  task.kind === 'advice' &&
  task.advice.kind === 'safety' &&
  task.advice.reason.why === 'safety' &&
  ['throw-out', 'out-of-limits', 'reading-missed'].includes(task.advice.reason.what)

/** Guests to find, and food that must not be served, are told in another colour and frame. */
export const isUrgent = (task: Task): boolean =>
  isGuestsFirst(task) || isSafety(task) || isMissed(task)

interface DoNextProps {
  /** null: nothing is to be done. */
  readonly next: PlacedTask | null
  /** What is said while there is nothing. */
  readonly calm: { readonly title: string; readonly why: readonly string[] }
  readonly tasks: Tasks
  /** Where one pan is in sight: what is done with it while nothing has to be. */
  readonly way: { readonly label: string; readonly act: () => void } | null
}

/** The one thing to do next, with its reason in numbers, and how to answer it. */
export function DoNext({ next, calm, tasks, way }: DoNextProps) {
  const words = usePansWords()
  const settled = useSettled(next?.key ?? '')
  const said = next?.told ?? calm
  const task = next?.task
  const advice = task?.kind === 'advice' && task.advice.kind !== 'safety' ? task.advice : null
  const tap = (act: () => Promise<void>) => () => {
    if (settled()) void act()
  }
  return (
    <section
      className={styles.next}
      aria-label={words.doNext}
      data-kind={next ? 'next' : 'calm'}
      data-urgent={(task && isUrgent(task)) || undefined}
    >
      <div className={styles.said}>
        {next && <h2>{words.doNext}</h2>}
        <p className={styles.title}>{said.title}</p>
        <div className={styles.why}>
          {said.why.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </div>
      </div>
      {!next && way && (
        <div className={styles.answers}>
          <Button size="large" data-main="" onClick={way.act}>
            {way.label}
          </Button>
        </div>
      )}
      {next && (
        <div className={styles.answers}>
          {next.told.button !== '' && (
            <Button
              kind="main"
              size="large"
              data-main=""
              disabled={tasks.busy}
              onClick={tap(() => tasks.go(next.task, next.told))}
            >
              {next.told.button}
            </Button>
          )}
          {advice && (
            <>
              <Button disabled={tasks.busy} onClick={tap(() => tasks.answer(advice, 'put-off'))}>
                {words.advice.later}
              </Button>
              <Button disabled={tasks.busy} onClick={tap(() => tasks.answer(advice, 'declined'))}>
                {words.advice.no}
              </Button>
            </>
          )}
        </div>
      )}
    </section>
  )
}
