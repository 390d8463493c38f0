import styles from '#components/plan/day-form.module.css'
import { usePlanWords } from '#components/plan/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Field } from '#components/ui/field.tsx'
import {
  alsoTheDayBefore,
  type CrewEntry,
  crewOf,
  type PlanEntry,
} from '#lib/rooms/prep/views/plan-entry.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** Who is there when, by initials: an entry for each time that somebody is. */
export function CrewRows({
  station,
  entry,
  onEntry,
}: {
  readonly station: StationDocument
  readonly entry: PlanEntry
  readonly onEntry: (entry: PlanEntry) => void
}) {
  const words = usePlanWords()
  const { form } = words
  const { crew } = entry
  const known = crewOf(station, entry.bells, entry.on)
  const set = (index: number, part: Partial<CrewEntry>) =>
    onEntry({
      ...entry,
      crew: crew.map((one, at) => (at === index ? { ...one, ...part } : one)),
    })
  const add = () => {
    const next = { initials: '', adult: false, on: entry.on, from: '', to: '' }
    onEntry({ ...entry, crew: [...crew, next] })
  }
  return (
    <fieldset className={styles.rows}>
      <legend>{form.crew}</legend>
      {crew.map((one, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row has nothing else of its own yet
        <div key={index} className={styles.crew}>
          <Field
            label={form.initials}
            maxLength={6}
            value={one.initials}
            onChange={(event) => set(index, { initials: event.target.value })}
          />
          <button
            type="button"
            className={styles.kind}
            aria-pressed={one.adult}
            onClick={() => set(index, { adult: !one.adult })}
          >
            {one.adult ? form.adult : form.student}
          </button>
          <Field
            label={form.date}
            type="date"
            value={one.on}
            onChange={(event) => set(index, { on: event.target.value })}
          />
          <Field
            label={form.from}
            type="time"
            value={one.from}
            onChange={(event) => set(index, { from: event.target.value })}
          />
          <Field
            label={form.to}
            type="time"
            value={one.to}
            onChange={(event) => set(index, { to: event.target.value })}
          />
          <Button
            kind="quiet"
            onClick={() => onEntry({ ...entry, crew: crew.filter((_, at) => at !== index) })}
          >
            {form.remove}
          </Button>
        </div>
      ))}
      <div className={styles.row}>
        <Button kind="quiet" onClick={add}>
          {form.addCrew}
        </Button>
        {crew.some(({ on }) => on === entry.on) && entry.on !== '' && (
          <Button kind="quiet" onClick={() => onEntry(alsoTheDayBefore(entry))}>
            {form.dayBefore}
          </Button>
        )}
        {known.length > 0 && (
          <Button kind="quiet" onClick={() => onEntry({ ...entry, crew: known })}>
            {form.byBells}
          </Button>
        )}
      </div>
    </fieldset>
  )
}
