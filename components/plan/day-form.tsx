import type { Acting } from '#components/live/acting.ts'
import { CrewRows } from '#components/plan/crew-rows.tsx'
import styles from '#components/plan/day-form.module.css'
import { GroupRows } from '#components/plan/group-rows.tsx'
import { usePlanWords } from '#components/plan/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Choice } from '#components/ui/choice.tsx'
import { Field } from '#components/ui/field.tsx'
import { asRows, crewOf } from '#lib/rooms/prep/views/crew-entry.ts'
import { lackOf, onDay, type PlanEntry } from '#lib/rooms/prep/views/plan-entry.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

interface DayFormProps {
  readonly station: StationDocument
  readonly entry: PlanEntry
  readonly onEntry: (entry: PlanEntry) => void
  readonly acting: Acting
  readonly send: { readonly label: string; readonly go: () => void }
  readonly onBack?: () => void
}

function Items({ station, entry, onEntry }: Pick<DayFormProps, 'station' | 'entry' | 'onEntry'>) {
  const words = usePlanWords()
  const all = station.items.map(({ id }) => id)
  const on = entry.items ?? all
  const toggle = (id: string) => {
    const next = all.filter((one) => (one === id ? !on.includes(id) : on.includes(one)))
    onEntry({ ...entry, items: next.length === all.length ? null : next })
  }
  return (
    <fieldset className={styles.items}>
      <legend>{words.form.items}</legend>
      {station.items.map(({ id, name }) => (
        <button key={id} type="button" aria-pressed={on.includes(id)} onClick={() => toggle(id)}>
          {name}
        </button>
      ))}
    </fieldset>
  )
}

/** The day, its doors and bells, the guests expected, what is on sale, and who is there. */
export function DayForm({ station, entry, onEntry, acting, send, onBack }: DayFormProps) {
  const words = usePlanWords()
  const { form } = words
  const lack = lackOf(entry)
  const bells = station.day.bells ?? []
  const set = (part: Partial<PlanEntry>) => onEntry({ ...entry, ...part })
  const ring = (id: string) => {
    const next = id === '' ? null : id
    const known = crewOf(station, next, entry.on)
    set({ bells: next, ...(known.length > 0 ? { crew: asRows(known) } : {}) })
  }
  return (
    <div className={styles.form}>
      <div className={styles.day}>
        <Field
          label={form.onDay(entry.on)}
          type="date"
          value={entry.on}
          onChange={(event) => onEntry(onDay(entry, event.target.value))}
        />
        <Field
          label={form.opens}
          type="time"
          value={entry.doorsOpen}
          onChange={(event) => set({ doorsOpen: event.target.value })}
        />
        <Field
          label={form.closes}
          type="time"
          value={entry.doorsClose}
          onChange={(event) => set({ doorsClose: event.target.value })}
        />
        <Field
          label={form.walkIn}
          inputMode="numeric"
          maxLength={5}
          value={entry.walkIn}
          onChange={(event) => set({ walkIn: event.target.value })}
        />
      </div>
      <div className={styles.choices}>
        <Choice
          legend={form.kind}
          ways={[
            { id: 'real', label: form.real },
            { id: 'practice', label: form.practice },
          ]}
          chosen={entry.kind}
          onChoose={(kind) => set({ kind })}
        />
        {bells.length > 0 && (
          <Choice
            legend={form.bells}
            ways={[
              ...bells.map(({ id, name }) => ({ id, label: name })),
              { id: '', label: form.noBells },
            ]}
            chosen={entry.bells ?? ''}
            onChoose={ring}
          />
        )}
        <Items {...{ station, entry, onEntry }} />
      </div>
      <GroupRows groups={entry.groups} onGroups={(groups) => set({ groups })} />
      <CrewRows {...{ station, entry, onEntry }} />
      <div className={styles.send}>
        {onBack && (
          <Button kind="quiet" onClick={onBack}>
            {words.back}
          </Button>
        )}
        <Button
          kind="main"
          size="large"
          lacks={lack && words.lacks[lack]}
          disabled={acting.busy}
          onClick={send.go}
        >
          {send.label}
        </Button>
        <p role="status" data-kind={acting.said?.kind ?? 'none'}>
          {acting.said?.text ?? ''}
        </p>
      </div>
    </div>
  )
}
