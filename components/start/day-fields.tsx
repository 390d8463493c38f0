import styles from '#components/start/day.module.css'
import { useStartWords } from '#components/start/words.tsx'
import {
  closingTimes,
  type DayEntry,
  MOST_ASSEMBLERS,
  MOST_GUESTS,
  wrongInDay,
} from '#lib/rooms/day/views/day-entry.ts'

/** Guests expected, closing time, assemblers: each may stay empty. */
export function DayFields({
  day,
  onDay,
}: {
  readonly day: DayEntry
  readonly onDay: (day: DayEntry) => void
}) {
  const words = useStartWords()
  const wrong = wrongInDay(day)
  return (
    <div className={styles.day}>
      <div className={styles.fields}>
        <label>
          {words.guests}
          <input
            inputMode="numeric"
            autoComplete="off"
            maxLength={7}
            aria-invalid={wrong.guests}
            aria-describedby="guests-wrong"
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
            inputMode="numeric"
            autoComplete="off"
            maxLength={7}
            aria-invalid={wrong.assemblers}
            aria-describedby="assemblers-wrong"
            value={day.assemblers}
            onChange={(event) => onDay({ ...day, assemblers: event.target.value })}
          />
        </label>
      </div>
      <p id="guests-wrong" role="alert" className={styles.wrong}>
        {wrong.guests ? words.guestsWrong(MOST_GUESTS) : ''}
      </p>
      <p id="assemblers-wrong" role="alert" className={styles.wrong}>
        {wrong.assemblers ? words.assemblersWrong(MOST_ASSEMBLERS) : ''}
      </p>
      <p>{words.dayWhy}</p>
    </div>
  )
}
