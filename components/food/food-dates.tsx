import { useEffect, useRef, useState } from 'react'
import styles from '#components/food/food-dates.module.css'
import type { FoodDatesProps } from '#components/food/said-dates.ts'
import job from '#components/job/job.module.css'
import { JobForm } from '#components/job/job-form.tsx'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { Button } from '#components/ui/button.tsx'
import { Field } from '#components/ui/field.tsx'
import { Note } from '#components/ui/note.tsx'
import { useSettled } from '#components/ui/settled.ts'
import {
  type DateEntry,
  daysOffered,
  judgeDates,
  noDates,
  startedOn,
} from '#lib/rooms/food/views/date-entry.ts'
import { limitsOf } from '#lib/service/food-limits.ts'

/** When it was opened or made, the maker's use-by, and a freezing: its last day is told before it is sent. */
export function FoodDates(props: FoodDatesProps) {
  const words = useFoodWords()
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
  const lack =
    lacks === 'preparedOn'
      ? words.dates.lack.preparedOn[firstDay]
      : lacks && words.dates.lack[lacks]
  const day = (name: 'preparedOn' | 'useBy' | 'frozenOn' | 'thawedOn', label: string, how = '') => (
    <div>
      <Field
        label={label}
        type="date"
        value={entry[name]}
        max={name === 'useBy' ? undefined : name === 'preparedOn' ? newest : today}
        onChange={(event) => change({ [name]: event.target.value })}
      />
      {how !== '' && <small>{how}</small>}
    </div>
  )
  const act = () => {
    if (settled() && judged.isReady && lastDay !== null)
      onSaid({ entry, told: judged.told, lastDay })
  }
  return (
    <JobForm
      job={{
        lack: judged.isReady ? null : (lack ?? words.dates.title),
        busy: false,
        send: act,
      }}
      send={words.dates.send}
      sub={lastDay === null ? undefined : words.dates.lastUse(words.sayDate(lastDay))}
      ways={
        // Food that is over isn't made good by saying nothing of its date.
        <Button
          disabled={isOver}
          onClick={() => {
            if (settled()) onSaid(null)
          }}
        >
          {none}
        </Button>
      }
      side={
        <div className={job.what}>
          <div role="status" aria-live="polite">
            {problem && lacks === null ? (
              <Note kind="no">{words.sayDateProblem(problem)}</Note>
            ) : isOver && lastDay !== null ? (
              <Note kind="no">{words.sayDateOver(lastDay)}</Note>
            ) : (
              lastDay !== null && (
                <p className={job.large}>{words.dates.lastUse(words.sayDate(lastDay))}</p>
              )
            )}
          </div>
          <p className={job.small}>
            {words.dates.limit(
              limits.dateMark,
              words.safety.limit(limits.dateMarkCold, station.safety.scale),
            )}{' '}
            {words.safety.paragraph(limits.dateMark)}. {words.safety.decides}
          </p>
        </div>
      }
    >
      <fieldset ref={head} tabIndex={-1} className={styles.dates}>
        <legend className="visually-hidden">{words.dates.title}</legend>
        {day('preparedOn', words.dates.firstDay[firstDay], words.dates.firstDayHow[firstDay])}
        <span className={styles.quick}>
          {([today, yesterday] as const)
            .filter((one) => one <= newest)
            .map((one) => (
              <Button
                key={one}
                aria-pressed={entry.preparedOn === one}
                onClick={() => change({ preparedOn: one })}
              >
                {one === today ? words.dates.today : words.dates.yesterday}
              </Button>
            ))}
        </span>
        {day('useBy', words.dates.useBy, words.dates.useByHow[firstDay])}
        <label className={job.check}>
          <input
            type="checkbox"
            checked={entry.wasFrozen}
            onChange={(event) => change({ wasFrozen: event.target.checked })}
          />
          {words.dates.frozen}
        </label>
        {entry.wasFrozen && (
          <>
            {day('frozenOn', words.dates.frozenOn)}
            {day('thawedOn', words.dates.thawedOn)}
          </>
        )}
      </fieldset>
    </JobForm>
  )
}
