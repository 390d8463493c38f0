import { isUrgent } from '#components/pans/do-next.tsx'
import styles from '#components/pans/hanging.module.css'
import type { PlacedTasks } from '#components/pans/placed-tasks.ts'
import { usePansWords } from '#components/pans/words.tsx'
import type { FoodTimes } from '#lib/rooms/food/facts/food-times.ts'

interface HangingProps {
  readonly placed: PlacedTasks
  readonly pan: string
  readonly times: FoodTimes | null
  readonly time: (at: number) => string
}

const MOST = 2

/** What hangs below a pan: later tasks, a tap each, and the times that bind what it holds. */
export function Hanging({ placed, pan, times, time }: HangingProps) {
  const words = usePansWords()
  const { hang } = words.onLine
  const tasks = placed.below[pan] ?? []
  const said = [
    ...(times?.readBy ? [hang.readBy(time(times.readBy))] : []),
    ...(times?.throwOutAt ? [hang.outAt(time(times.throwOutAt))] : []),
    ...(placed.putOff[pan] === undefined ? [] : [placed.putOff[pan]]),
  ].filter((one) => tasks.every(({ told }) => told.hang !== one))
  const isNext = placed.next?.told.hang
  return (
    <div className={styles.hanging}>
      {tasks.slice(0, MOST).map((one) => (
        <button
          key={one.key}
          type="button"
          aria-label={one.told.short}
          data-urgent={isUrgent(one.task) || undefined}
          onClick={() => placed.go(one)}
        >
          {one.told.hang}
        </button>
      ))}
      {tasks.length < placed.most &&
        said
          .filter((one) => one !== isNext)
          .slice(0, 1)
          .map((one) => <span key={one}>{one}</span>)}
    </div>
  )
}
