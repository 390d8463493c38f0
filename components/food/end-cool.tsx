import styles from '#components/food/end-form.module.css'
import { useFoodWords } from '#components/job/use-food-words.ts'
import type { CoolEnd } from '#lib/rooms/day/views/cool-end.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import type { RunningState } from '#lib/service/state.ts'

/** What cooling it takes, before it is chosen: when it is read next, who is there, and how little is left. */
export function EndCool({
  cools,
  state,
  now,
  time,
}: {
  readonly cools: CoolEnd
  readonly state: RunningState
  readonly now: number
  readonly time: (at: number) => string
}) {
  const words = useFoodWords()
  const { scale } = state.station.safety
  const hot = words.safety.limit(limitsOf(state.station).coolingFrom, scale)
  const { tooLittle } = cools
  return (
    <>
      <p className={styles.cool}>
        <b>{words.ends.end.cool}:</b> {words.ends.coolNext(cools, hot, time)}
      </p>
      {tooLittle && (
        <p className={styles.little}>{words.ends.coolLittle(tooLittle, { scale, now, time })}</p>
      )}
    </>
  )
}
