import styles from '#components/food/end-form.module.css'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { type DayReading, drawnAt } from '#lib/rooms/day/views/end-step.ts'
import type { SafetyLimits } from '#lib/safety/limits.ts'

/** What was read of a place's food as one line, between the limits of hot and cold. */
export function DayReadings({
  read,
  limits,
  time,
}: {
  readonly read: readonly DayReading[]
  readonly limits: SafetyLimits
  readonly time: (at: number) => string
}) {
  const words = useFoodWords()
  if (read.length === 0) return null
  const y = (of: number) => 100 * (1 - of)
  const x = (index: number) => (100 * (index + 0.5)) / read.length
  const path = read.map(
    ({ reading }, index) =>
      `${index === 0 ? 'M' : 'L'}${x(index)} ${y(drawnAt(reading.temperature))}`,
  )
  const limitsAt = [limits.hotHolding, limits.coldHolding].map(({ tenths }) =>
    y(drawnAt({ tenths: tenths.F, scale: 'F' })),
  )
  return (
    <ol className={styles.day}>
      <svg viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true">
        {limitsAt.map((at) => (
          <line key={at} x1="0" x2="100" y1={at} y2={at} />
        ))}
        <path d={path.join(' ')} />
      </svg>
      {read.map(({ of, reading }) => (
        <li key={`${of} ${reading.at}`}>
          <b>{words.sayDegrees(reading.temperature)}</b>
          <span>{words.ends.ofRead[of]}</span>
          <span>{time(reading.at)}</span>
        </li>
      ))}
    </ol>
  )
}
