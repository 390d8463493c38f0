import styles from '#components/food/end-form.module.css'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { daySums, levelOf } from '#lib/rooms/day/views/day-amounts.ts'
import type { Placed } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'

/** How full it was since it was loaded, with what of its food came and went. */
export function DayLevel({
  state,
  place,
  now,
  elsewhere,
}: {
  readonly state: RunningState
  readonly place: Placed
  readonly now: number
  /** What else of it is where, said. */
  readonly elsewhere: readonly string[]
}) {
  const words = useFoodWords()
  const each = state.portions[place.component]?.amount ?? 1
  const { loaded, used, wasted } = daySums(state, place.component)
  const level = levelOf(state, place, now)
  const portions = (amount: number) => Math.round(amount / each)
  const from = level?.points[0]
  const most = Math.max(1, ...(level?.points ?? []).map(({ amount }) => amount))
  const x = (at: number) => (from ? (100 * (at - from.at)) / Math.max(1, now - from.at) : 0)
  const y = (amount: number) => 100 - (100 * amount) / most
  const path = (level?.points ?? []).map(({ at, amount }, index) =>
    index === 0 ? `M0 ${y(amount)}` : `${level?.isKnown ? `H${x(at)}V` : `L100 `}${y(amount)}`,
  )
  return (
    <span className={styles.level}>
      {level && (
        <svg viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true">
          <path className={styles.food} d={`${path.join('')}V100H0Z`} />
          <path data-unknown={level.isKnown ? undefined : ''} d={path.join('')} />
        </svg>
      )}
      <span>{words.ends.sums(elsewhere, portions(loaded), portions(used), portions(wasted))}</span>
    </span>
  )
}
