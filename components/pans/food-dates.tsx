import { useEffect, useRef, useState } from 'react'
import styles from '#components/pans/food-dates.module.css'
import forms from '#components/pans/forms.module.css'
import type { FoodDatesProps } from '#components/pans/said-dates.ts'
import { useSettled } from '#components/ui/settled.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import {
  type DateEntry,
  daysOffered,
  judgeDates,
  noDates,
  startedOn,
} from '#lib/views/date-entry.ts'
import { sayDateOver, sayDateProblem } from '#lib/words/date-problems-en.ts'
import { dateWords as words } from '#lib/words/dates-en.ts'
import { sayDate } from '#lib/words/day-en.ts'
import { safetyWords } from '#lib/words/safety-en.ts'

/** When it was opened or made, the maker's use-by, and a freezing: its last day is told before it is sent. */
export function FoodDates(props: FoodDatesProps) {
  const { state, now, firstDay, batch, said, onSaid, none } = props
  const { station } = state
  const started = startedOn(state, batch)
  const [entry, setEntry] = useState<DateEntry>(() => said?.entry ?? noDates(started))
  const settled = useSettled('dates')
  const head = useRef<HTMLFieldSetElement>(null)
  useEffect(() => head.current?.focus({ preventScroll: true }), [])
  const change = (part: Partial<DateEntry>) => setEntry((before) => ({ ...before, ...part }))
  const { today, yesterday } = daysOffered(station, now)
  const newest = started ?? today
  const judged = judgeDates(station, entry, started, now)
  const { lacks, problem, lastDay, isOver } = judged
  const limits = limitsOf(station)
  const lack = lacks === 'preparedOn' ? words.lack.preparedOn[firstDay] : lacks && words.lack[lacks]
  const day = (name: 'preparedOn' | 'useBy' | 'frozenOn' | 'thawedOn', label: string, how = '') => (
    <label className={forms.field}>
      {label}
      <input
        type="date"
        value={entry[name]}
        max={name === 'useBy' ? undefined : name === 'preparedOn' ? newest : today}
        onChange={(event) => change({ [name]: event.target.value })}
      />
      {how !== '' && <small>{how}</small>}
    </label>
  )
  const act = () => {
    if (settled() && judged.isReady && lastDay !== null)
      onSaid({ entry, told: judged.told, lastDay })
  }
  return (
    <div className={forms.what}>
      <fieldset ref={head} tabIndex={-1} className={styles.dates}>
        <legend className="visually-hidden">{words.title}</legend>
        {day('preparedOn', words.firstDay[firstDay], words.firstDayHow[firstDay])}
        <span className={styles.quick}>
          {([today, yesterday] as const)
            .filter((one) => one <= newest)
            .map((one) => (
              <button
                key={one}
                type="button"
                aria-pressed={entry.preparedOn === one}
                onClick={() => change({ preparedOn: one })}
              >
                {one === today ? words.today : words.yesterday}
              </button>
            ))}
        </span>
        {day('useBy', words.useBy, words.useByHow[firstDay])}
        <label className={forms.check}>
          <input
            type="checkbox"
            checked={entry.wasFrozen}
            onChange={(event) => change({ wasFrozen: event.target.checked })}
          />
          {words.frozen}
        </label>
        {entry.wasFrozen && (
          <>
            {day('frozenOn', words.frozenOn)}
            {day('thawedOn', words.thawedOn)}
          </>
        )}
      </fieldset>
      <div role="status" aria-live="polite">
        {problem && lacks === null ? (
          <p className={forms.warn}>{sayDateProblem(problem)}</p>
        ) : isOver && lastDay !== null ? (
          <p className={forms.warn}>{sayDateOver(lastDay)}</p>
        ) : lack ? (
          <p className={forms.note}>{lack}</p>
        ) : (
          lastDay !== null && <p className={forms.large}>{words.lastUse(sayDate(lastDay))}</p>
        )}
      </div>
      <p className={styles.limit}>
        {words.limit(limits.dateMark, safetyWords.limit(limits.dateMarkCold, station.safety.scale))}{' '}
        <small>
          {safetyWords.paragraph(limits.dateMark)}. {safetyWords.decides}
        </small>
      </p>
      <div className={styles.send}>
        <button
          type="button"
          className={styles.none}
          // Food that is over isn't made good by saying nothing of its date.
          disabled={isOver}
          onClick={() => {
            if (settled()) onSaid(null)
          }}
        >
          {none}
        </button>
        <button type="button" className={forms.main} disabled={!judged.isReady} onClick={act}>
          {words.send}
        </button>
      </div>
    </div>
  )
}
