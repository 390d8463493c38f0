import { useState } from 'react'
import { Line } from '#components/line/line.tsx'
import { TastedPan } from '#components/tasting/tasted-pan.tsx'
import styles from '#components/tasting/tasting.module.css'
import type { TastingAct } from '#components/tasting/use-tastings.ts'
import { useTastingWords } from '#components/tasting/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Choice } from '#components/ui/choice.tsx'
import { Field } from '#components/ui/field.tsx'
import { Notch } from '#components/ui/notch.tsx'
import { findComponent, pansOf } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import {
  componentsOfItem,
  firstTasting,
  periodsOf,
  planTastingOf,
  type TastingEntry,
  tastingLack,
  toggled,
} from '#lib/tasting/entry.ts'
import { MOST_PORTIONS, MOST_TASTERS } from '#lib/tasting/tasting.ts'

const OWN_TIME = ''

function Counted({
  label,
  value,
  most,
  onValue,
}: {
  readonly label: string
  readonly value: number
  readonly most: number
  readonly onValue: (value: number) => void
}) {
  const { form } = useTastingWords()
  return (
    <div className={styles.counted}>
      <Button
        aria-label={form.fewer(label)}
        disabled={value <= 1}
        onClick={() => onValue(value - 1)}
      >
        −
      </Button>
      <p>
        <b>{value}</b> {label}
      </p>
      <Button
        aria-label={form.more(label)}
        disabled={value >= most}
        onClick={() => onValue(value + 1)}
      >
        +
      </Button>
    </div>
  )
}

function When({
  station,
  entry,
  set,
}: {
  readonly station: StationDocument
  readonly entry: TastingEntry
  readonly set: (part: Partial<TastingEntry>) => void
}) {
  const { form } = useTastingWords()
  const periods = periodsOf(station)
  const ring = (name: string) => {
    const found = periods.find((one) => one.name === name)
    set(found ? { period: name, from: found.from, to: found.to } : { period: null })
  }
  return (
    <div className={styles.when}>
      <Field
        label={form.on}
        type="date"
        value={entry.on}
        onChange={({ target }) => set({ on: target.value })}
      />
      {periods.length > 0 && (
        <Choice
          legend={form.period}
          ways={[
            ...periods.map(({ name, from, to }) => ({
              id: name,
              label: name,
              more: `${from}–${to}`,
            })),
            { id: OWN_TIME, label: form.ownTime },
          ]}
          chosen={entry.period ?? OWN_TIME}
          onChoose={ring}
        />
      )}
      {entry.period === null && (
        <>
          <Field
            label={form.from}
            type="time"
            value={entry.from}
            onChange={({ target }) => set({ from: target.value })}
          />
          <Field
            label={form.to}
            type="time"
            value={entry.to}
            onChange={({ target }) => set({ to: target.value })}
          />
        </>
      )}
    </div>
  )
}

/** What is tasted, tapped on the line; when, for how many, by how many. */
export function PlanForm({
  station,
  now,
  first,
  acting,
  onPlanned,
}: {
  readonly station: StationDocument
  readonly now: number
  readonly first: readonly string[]
  readonly acting: TastingAct
  readonly onPlanned: (tasting: string) => void
}) {
  const words = useTastingWords()
  const { form } = words
  const [entry, setEntry] = useState(() => firstTasting(station, now, first))
  const set = (part: Partial<TastingEntry>) => {
    acting.hush()
    setEntry((before) => ({ ...before, ...part }))
  }
  const toggle = (some: readonly string[]) => set({ components: toggled(entry.components, some) })
  const about = pansOf(station).filter(({ component }) => entry.components.includes(component))
  const lack = tastingLack(entry)
  const send = async () => {
    const made = await acting.act(planTastingOf(entry, station.id))
    if (made !== null) onPlanned(made)
  }
  const names = entry.components.map((one) => findComponent(station, one)?.name ?? one)
  return (
    <Notch about={about.map(({ id }) => id)} className={styles.stage ?? ''}>
      <div className={styles.line}>
        <Line
          station={station}
          label={words.line}
          wrap="by-well"
          renderPan={(pan, component) => (
            <TastedPan
              {...{ component }}
              pan={pan.id}
              isTasted={entry.components.includes(component.id)}
              who={null}
              onTap={() => toggle([component.id])}
            />
          )}
        />
      </div>
      <section className={styles.panel} data-notch-panel="">
        <div className={styles.chosen}>
          <h2>{form.chosen(names)}</h2>
          <div className={styles.items}>
            <span>{form.items}</span>
            {station.items.map(({ id, name }) => {
              const some = componentsOfItem(station, id)
              return (
                <button
                  key={id}
                  type="button"
                  aria-pressed={some.every((one) => entry.components.includes(one))}
                  onClick={() => toggle(some)}
                >
                  {name}
                </button>
              )
            })}
          </div>
        </div>
        <When {...{ station, entry, set }} />
        <div className={styles.acts}>
          <Counted
            label={form.portions}
            value={entry.portions}
            most={MOST_PORTIONS}
            onValue={(portions) => set({ portions })}
          />
          <Counted
            label={form.tasters}
            value={entry.tasters}
            most={MOST_TASTERS}
            onValue={(tasters) => set({ tasters })}
          />
          <Button
            kind="main"
            size="large"
            lacks={lack && form.lacks(lack)}
            disabled={acting.busy}
            onClick={() => void send()}
          >
            {form.send}
          </Button>
        </div>
        <p role="status" className={styles.said}>
          {acting.said ?? ''}
        </p>
      </section>
    </Notch>
  )
}
