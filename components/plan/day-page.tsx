import { useState } from 'react'
import { useActing } from '#components/live/acting.ts'
import { DayForm } from '#components/plan/day-form.tsx'
import styles from '#components/plan/plan.module.css'
import { type Ahead, askAhead, useAhead } from '#components/plan/use-ahead.ts'
import { usePlanWords } from '#components/plan/words.tsx'
import type { AheadAnswer, PlannedService } from '#lib/rooms/prep/views/ahead.ts'
import { firstEntry, type PlanEntry, planCommandOf } from '#lib/rooms/prep/views/plan-entry.ts'

/** The address of a service that is planned, of the station that this page is of. */
const wayTo = (station: string, service: string, page: '/' | '/plan' = '/plan'): string => {
  const search = new URLSearchParams(location.search)
  search.set('station', station)
  search.set('service', service)
  return `${page}?${search}`
}

function Planned({ answer }: { readonly answer: AheadAnswer }) {
  const words = usePlanWords()
  if (answer.plans.length === 0) return null
  return (
    <nav className={styles.planned} aria-label={words.planned}>
      <h2>{words.planned}</h2>
      <ul>
        {answer.plans.map(({ service, on, doorsOpen, doorsClose, kind, isOver }) => (
          <li key={service}>
            <a href={wayTo(answer.station.id, service, isOver ? '/' : '/plan')}>
              {words.plannedRow(on, doorsOpen, doorsClose, kind === 'practice')}
              {isOver && ` · ${words.over}`}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  )
}

/** The plan that was just made: it is the one of that day and time. */
const planOf = (ahead: Ahead, entry: PlanEntry): PlannedService | undefined =>
  ahead.is === 'there'
    ? ahead.answer.plans.find(
        ({ on, doorsOpen }) => on === entry.on && doorsOpen === entry.doorsOpen,
      )
    : undefined

function NewDay({ answer }: { readonly answer: AheadAnswer }) {
  const words = usePlanWords()
  const { station } = answer
  const acting = useActing(words.loadRefusals)
  const [entry, setEntry] = useState(() => firstEntry(station, answer.at))
  const send = async () => {
    if (!(await acting.act(planCommandOf(entry, station.id), words.form.sent))) return
    const made = planOf(await askAhead({ guests: null }), entry)
    if (made) location.assign(wayTo(station.id, made.service))
  }
  return (
    <DayForm
      {...{ station, entry, acting }}
      onEntry={setEntry}
      send={{ label: words.form.send, go: () => void send() }}
    />
  )
}

/** A day is chosen: one that is planned already, or a new one. */
export function DayPage() {
  const words = usePlanWords()
  const ahead = useAhead({ guests: null })
  return (
    <main className={styles.dayPage}>
      <header className={styles.header}>
        <h1>{words.title}</h1>
        <a className={styles.way} href={`/tasting${location.search}`}>
          {words.toTasting}
        </a>
        <a className={styles.way} href={`/${location.search}`}>
          {words.toStart}
        </a>
      </header>
      {ahead.is === 'there' ? (
        <>
          <Planned answer={ahead.answer} />
          <h2>{words.anotherDay(ahead.answer.plans.length)}</h2>
          <NewDay answer={ahead.answer} />
        </>
      ) : (
        <p role="status">
          {ahead.is === 'looking' && words.connecting}
          {ahead.is === 'lost' && words.lost}
          {ahead.is === 'refused' &&
            (ahead.code === 'no-such-station' ? words.noStation : words.notYours)}
        </p>
      )}
    </main>
  )
}
