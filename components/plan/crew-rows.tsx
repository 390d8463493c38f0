import styles from '#components/plan/crew.module.css'
import form from '#components/plan/day-form.module.css'
import { usePlanWords } from '#components/plan/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Choice } from '#components/ui/choice.tsx'
import { Field } from '#components/ui/field.tsx'
import {
  alsoTheDayBefore,
  asRows,
  type CrewEntry,
  crewOf,
  type Period,
  periodsOf,
  withPerson,
} from '#lib/rooms/prep/views/crew-entry.ts'
import {
  type CrewRow,
  crewRows,
  daysFor,
  toggled,
  withoutPerson,
  withRow,
} from '#lib/rooms/prep/views/crew-rows.ts'
import type { PlanEntry } from '#lib/rooms/prep/views/plan-entry.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

interface RowProps {
  readonly row: CrewRow
  readonly periods: readonly Period[]
  readonly entry: PlanEntry
  readonly onEntry: (entry: PlanEntry) => void
}

/** Periods of the day before and of the day, each there or not by one tap. */
function Periods({ row, entry, onEntry }: Omit<RowProps, 'periods'>) {
  const words = usePlanWords()
  const name = row.initials.trim() || words.form.somebody
  return (
    <div className={styles.days}>
      {row.days.map(({ on, cells }) => (
        <div key={on} className={styles.day}>
          <b>{words.form.day(on)}</b>
          {cells.map(({ period, isThere }) => (
            <button
              key={period.id}
              type="button"
              aria-pressed={isThere}
              aria-label={words.form.cell(name, period.name, on)}
              onClick={() => onEntry(withRow(entry, toggled(row, on, period.id)))}
            >
              {period.name}
            </button>
          ))}
        </div>
      ))}
    </div>
  )
}

interface TimeProps {
  readonly days: readonly string[]
  readonly one: CrewEntry
  readonly set: (part: Partial<CrewEntry>) => void
  /** null where it is the only one: the person is removed instead. */
  readonly remove: (() => void) | null
}

/** A time that isn't from bell to bell. */
function Time({ days, one, set, remove }: TimeProps) {
  const { form: words } = usePlanWords()
  const all = days.includes(one.on) || one.on === '' ? days : [one.on, ...days]
  return (
    <div className={styles.time}>
      <Choice
        legend={words.date}
        ways={all.map((id) => ({ id, label: words.day(id) }))}
        chosen={one.on}
        onChoose={(on) => set({ on })}
      />
      <Field
        label={words.from}
        type="time"
        value={one.from}
        onChange={(event) => set({ from: event.target.value })}
      />
      <Field
        label={words.to}
        type="time"
        value={one.to}
        onChange={(event) => set({ to: event.target.value })}
      />
      {remove && (
        <Button kind="quiet" onClick={remove}>
          {words.removeTime}
        </Button>
      )}
    </div>
  )
}

/** Somebody of the crew: who, and when. */
function Person({ row, periods, entry, onEntry }: RowProps) {
  const { form: words } = usePlanWords()
  const { person, initials, adult, times } = row
  const setTime = (at: number, part: Partial<CrewEntry>) =>
    onEntry({
      ...entry,
      crew: entry.crew.map((one, index) => (index === at ? { ...one, ...part } : one)),
    })
  const addTime = () => {
    const last = entry.crew.findLastIndex((one) => one.person === person)
    // Blank times are none: one after the last bell is shown, and lacks its end.
    const from = periods.at(-1)?.to ?? ''
    const next = { person, initials, adult, on: entry.on, from, to: '' }
    const crew = [...entry.crew.slice(0, last + 1), next, ...entry.crew.slice(last + 1)]
    onEntry({ ...entry, crew })
  }
  const isOnly = row.days.length === 0 && times.length === 1
  return (
    <div className={styles.person}>
      <div className={styles.who}>
        <Field
          label={words.initials}
          maxLength={6}
          value={initials}
          onChange={(event) => onEntry(withRow(entry, { ...row, initials: event.target.value }))}
        />
        <button
          type="button"
          className={form.kind}
          aria-pressed={adult}
          onClick={() => onEntry(withRow(entry, { ...row, adult: !adult }))}
        >
          {adult ? words.adult : words.student}
        </button>
        <Button kind="quiet" onClick={addTime}>
          {words.addTime}
        </Button>
        <Button kind="quiet" onClick={() => onEntry(withoutPerson(entry, person))}>
          {words.remove}
        </Button>
      </div>
      <div className={styles.when}>
        {row.days.length > 0 && <Periods {...{ row, entry, onEntry }} />}
        {times.map(({ at, entry: one }) => (
          <Time
            key={at}
            days={daysFor(entry.on)}
            one={one}
            set={(part) => setTime(at, part)}
            remove={
              isOnly
                ? null
                : () =>
                    onEntry(
                      withRow(entry, { ...row, times: times.filter((time) => time.at !== at) }),
                    )
            }
          />
        ))}
      </div>
    </div>
  )
}

/** Who is there when: a row for each person, by the periods of the bells or by other times. */
export function CrewRows({
  station,
  entry,
  onEntry,
}: {
  readonly station: StationDocument
  readonly entry: PlanEntry
  readonly onEntry: (entry: PlanEntry) => void
}) {
  const { form: words } = usePlanWords()
  const periods = periodsOf(station, entry.bells)
  const known = crewOf(station, entry.bells, entry.on)
  return (
    <fieldset className={form.rows}>
      <legend>{words.crew}</legend>
      {crewRows(entry, periods).map((row) => (
        <Person key={row.person} {...{ row, periods, entry, onEntry }} />
      ))}
      <div className={form.row}>
        <Button kind="quiet" onClick={() => onEntry(withPerson(entry))}>
          {words.addCrew}
        </Button>
        {entry.crew.some(({ on }) => on === entry.on) && entry.on !== '' && (
          <Button kind="quiet" onClick={() => onEntry(alsoTheDayBefore(entry))}>
            {words.dayBefore}
          </Button>
        )}
        {known.length > 0 && (
          <Button kind="quiet" onClick={() => onEntry({ ...entry, crew: asRows(known) })}>
            {words.byBells}
          </Button>
        )}
      </div>
    </fieldset>
  )
}
