import { ReadingStep } from '#components/food/reading-step.tsx'
import styles from '#components/job/job.module.css'
import type { TaskProps } from '#components/job/task-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { stepAt } from '#lib/rooms/food/views/round.ts'
import { placeOf } from '#lib/service/place.ts'

/** A reading of a pan that stands on the line or behind it, or of a batch that waits. */
export function ReadForm({ state, acting, task, now, onBack }: TaskProps<'read'>) {
  const words = useFoodWords()
  const { what, id } = task
  const step = stepAt(state, { what, id }, now)
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  if (step === null) return <p className={styles.large}>{words.round.gone}</p>
  const earlier = placeOf(state, task)?.readings.slice(-4) ?? []
  return (
    <ReadingStep
      {...{ state, acting, now, step }}
      more={
        earlier.length > 1 && (
          <ul className={styles.facts}>
            {earlier.map((one) => (
              <li key={one.at}>{words.read(words.sayDegrees(one.temperature), time(one.at))}</li>
            ))}
          </ul>
        )
      }
      onDone={onBack}
    />
  )
}
