import styles from '#components/start/day.module.css'
import { closingTimes, type DayEntry } from '#lib/views/day-entry.ts'
import { startWords as words } from '#lib/words/start-en.ts'

/** Guests expected, closing time, assemblers: each may stay empty. */
export function DayFields({
  day,
  onDay,
}: {
  readonly day: DayEntry
  readonly onDay: (day: DayEntry) => void
}) {
  return (
    <div className={styles.day}>
      <div className={styles.fields}>
        <label>
          {words.guests}
          <input
            type="number"
            inputMode="numeric"
            min={0}
            max={20_000}
            value={day.guests}
            onChange={(event) => onDay({ ...day, guests: event.target.value })}
          />
        </label>
        <label>
          {words.closes}
          <select
            value={day.closes}
            onChange={(event) => onDay({ ...day, closes: event.target.value })}
          >
            <option value="">{words.closesAsSetUp}</option>
            {closingTimes(day.closes).map((time) => (
              <option key={time} value={time}>
                {words.timeOfDay(time)}
              </option>
            ))}
          </select>
        </label>
        <label>
          {words.assemblers}
          <input
            type="number"
            inputMode="numeric"
            min={1}
            max={20}
            value={day.assemblers}
            onChange={(event) => onDay({ ...day, assemblers: event.target.value })}
          />
        </label>
      </div>
      <p>{words.dayWhy}</p>
    </div>
  )
}
