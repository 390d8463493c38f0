import { type ComponentType, useEffect, useRef } from 'react'
import { batchFacts } from '#components/food/batch-facts.ts'
import type { Chosen } from '#components/job/chosen.ts'
import { FoodWordsProvider } from '#components/job/food-words.tsx'
import type { TaskName, TaskProps } from '#components/job/task-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { JOBS, type JobOf } from '#components/pans/jobs.tsx'
import styles from '#components/pans/open-job.module.css'
import { panFacts } from '#components/pans/pan-facts.ts'
import { Button } from '#components/ui/button.tsx'
import { Note } from '#components/ui/note.tsx'
import { foodTimes } from '#lib/rooms/food/facts/food-times.ts'
import { panPictures } from '#lib/rooms/pans/facts/pans.ts'
import type { RunningState } from '#lib/service/state.ts'

type OpenProps = TaskProps<TaskName>

/** The entry of the table that a job is of: each takes what is told of its own kind. */
const entryOf = (task: Chosen): JobOf<TaskName> => JOBS[task.task] as unknown as JobOf<TaskName>

/** What goes along with the place that is asked makes no other job of it: what was tapped stays. */
const keyOf = (task: Chosen): string =>
  JSON.stringify(task.task === 'end' ? { task: task.task, at: task.at } : task)

const factsOf = (
  words: ReturnType<typeof useFoodWords>,
  { state, task, now }: Pick<OpenProps, 'state' | 'task' | 'now'>,
): readonly string[] => {
  const batch = task.task === 'batch' ? state.batches[task.id] : undefined
  if (batch && task.task === 'batch') return batchFacts(words, state, task.id, batch, now)
  const picture = task.task === 'pan' ? panPictures(state)[task.pan] : undefined
  return picture ? panFacts(words, state, picture, foodTimes(state, 'pan', picture.pan, now)) : []
}

function Title({ state, task, now, onBack }: Omit<OpenProps, 'acting' | 'choose'>) {
  const words = useFoodWords()
  const heading = useRef<HTMLHeadingElement>(null)
  const key = keyOf(task)
  // biome-ignore lint/correctness/useExhaustiveDependencies: each job begins at its head
  useEffect(() => heading.current?.focus({ preventScroll: true }), [key])
  const facts = factsOf(words, { state, task, now })
  return (
    <>
      <div className={styles.title}>
        <h1 ref={heading} tabIndex={-1}>
          {entryOf(task).title(words, state, task, now)}
        </h1>
        {facts.length > 0 && (
          <ul>
            {facts.map((fact) => (
              <li key={fact}>{fact}</li>
            ))}
          </ul>
        )}
      </div>
      <Button kind="quiet" className={styles.back} onClick={onBack}>
        {words.forms.back}
      </Button>
    </>
  )
}

/** What is done, and the way back: in the place of the board's own head. */
export function JobTitle(props: Omit<OpenProps, 'acting' | 'choose'>) {
  return (
    <FoodWordsProvider>
      <Title {...props} />
    </FoodWordsProvider>
  )
}

function Body(props: OpenProps) {
  const words = useFoodWords()
  const { state, acting, task, now } = props
  const { title, Body: Form } = entryOf(task)
  const Any = Form as ComponentType<OpenProps>
  return (
    <section
      className={styles.panel}
      data-job={task.task}
      aria-label={title(words, state, task, now)}
    >
      {acting.said?.kind === 'refused' && (
        <Note kind="no" role="alert">
          {acting.said.text}
        </Note>
      )}
      <Any key={keyOf(task)} {...props} />
    </section>
  )
}

/** The one job that is open, in the notch below the line. */
export function OpenJob(props: OpenProps & { readonly state: RunningState }) {
  return (
    <FoodWordsProvider>
      <Body {...props} />
    </FoodWordsProvider>
  )
}
