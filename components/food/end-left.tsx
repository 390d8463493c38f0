import { DayLevel } from '#components/food/day-level.tsx'
import styles from '#components/food/end-form.module.css'
import type { EndAmount } from '#components/food/use-end-amount.ts'
import job from '#components/job/job.module.css'
import { useFoodWords } from '#components/job/use-food-words.ts'
import type { HotSum } from '#lib/rooms/day/facts/ends/hot-food.ts'
import type { EndStep } from '#lib/rooms/day/views/end-step.ts'
import type { RunningState } from '#lib/service/state.ts'
import { nameIn } from '#lib/station/name-in.ts'

/** What is here and elsewhere of a food; or all that goes at once, before anybody signs for it. */
export function EndLeft({
  state,
  step: { place, elsewhere },
  much: { amount, each, isPieces },
  now,
  hot,
  isRead,
}: {
  readonly state: RunningState
  readonly step: EndStep
  readonly much: EndAmount
  readonly now: number
  /** Null where only this place is asked. */
  readonly hot: HotSum | null
  /** A reading is typed: there is no room for more. */
  readonly isRead: boolean
}) {
  const words = useFoodWords()
  const portionsOf = (of: number) => Math.round(of / each)
  if (hot)
    return (
      <div>
        <p className={job.large}>{words.ends.allHotIs(hot)}</p>
        <p>{words.ends.allHotOf(hot.components.map(nameIn(state.station)))}</p>
      </div>
    )
  return (
    <div className={styles.left}>
      <p className={job.large}>
        {words.ends.left(
          portionsOf(amount ?? place.amount),
          words.amount(amount ?? place.amount, isPieces ? 'piece' : 'mg'),
        )}
      </p>
      {!isRead && (
        <DayLevel
          {...{ state, place, now }}
          elsewhere={words.ends.elsewhere(
            elsewhere.map((one) => ({ what: one.what, portions: portionsOf(one.amount) })),
          )}
        />
      )}
    </div>
  )
}
