import { useState } from 'react'
import { useActing } from '#components/live/acting.ts'
import styles from '#components/start/day.module.css'
import { DayFields } from '#components/start/day-fields.tsx'
import { useStartWords } from '#components/start/words.tsx'
import { type DayEntry, dayCommand, dayOf, isDayWrong } from '#lib/rooms/day/views/day-entry.ts'
import type { RunningState } from '#lib/service/state.ts'

/** What is planned for the open service, and changing it. */
export function DayPlan({ state }: { readonly state: RunningState }) {
  const words = useStartWords()
  const { act, busy, said } = useActing(words.loadRefusals)
  const [day, setDay] = useState<DayEntry | null>(null)
  const { expected, closesAt, assemblers, station } = state
  const keep = async (entry: DayEntry) => {
    if (await act({ type: 'setDay', ...dayCommand(entry) }, words.dayUsed)) setDay(null)
  }
  return (
    <div className={styles.plan}>
      {day === null ? (
        <>
          <p>
            {words.plan(
              expected,
              closesAt === null ? null : words.sayClock(closesAt, station.timeZone),
              assemblers,
            )}
          </p>
          <button type="button" onClick={() => setDay(dayOf(state, station.timeZone))}>
            {words.changeDay}
          </button>
        </>
      ) : (
        <>
          <DayFields day={day} onDay={setDay} />
          <button
            type="button"
            data-kind="main"
            disabled={busy || isDayWrong(day)}
            onClick={() => void keep(day)}
          >
            {words.useDay}
          </button>
          <button type="button" onClick={() => setDay(null)}>
            {words.leaveDay}
          </button>
        </>
      )}
      <p role="status" className={styles.said} data-kind={said?.kind ?? 'none'}>
        {said?.text ?? ''}
      </p>
    </div>
  )
}
