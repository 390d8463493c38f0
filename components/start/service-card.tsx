import { useEffect, useRef, useState } from 'react'
import { useActing } from '#components/live/acting.ts'
import { Connection } from '#components/live/connection.tsx'
import { useCrew } from '#components/live/crew.tsx'
import { useServerTime } from '#components/live/server-time.ts'
import { DayFields } from '#components/start/day-fields.tsx'
import { DayPlan } from '#components/start/day-plan.tsx'
import { PlannedList } from '#components/start/planned-list.tsx'
import styles from '#components/start/start.module.css'
import { useStartWords } from '#components/start/words.tsx'
import { type DayEntry, dayCommand, isDayWrong, NO_DAY } from '#lib/rooms/day/views/day-entry.ts'
import { usualLoads } from '#lib/rooms/pans/facts/pans-to-do.ts'
import { isRunning } from '#lib/service/state.ts'

/** Readings are told as taken a moment before, so that a clock that differs a little is no matter. */
const A_MOMENT_MS = 1_000

/** Whether a service is open and since when; opens one. */
export function ServiceCard() {
  const words = useStartWords()
  const isKnown = useCrew(
    (view) =>
      view.welcome !== null && (view.service === null || view.service === view.state.service),
  )
  const station = useCrew((view) => view.welcome?.station ?? null)
  const isDemo = useCrew((view) => view.welcome?.house === 'demo')
  const state = useCrew((view) => view.state)
  const { act, busy, said } = useActing(words.loadRefusals)
  const fillsNext = useRef(false)
  const now = useRef(0)
  now.current = useServerTime()
  const [day, setDay] = useState<DayEntry>(NO_DAY)
  const [isFilling, setFilling] = useState(false)

  useEffect(() => {
    if (!fillsNext.current || !isRunning(state) || state.stage !== 'open') return
    fillsNext.current = false
    setFilling(true)
    const fill = async () => {
      const { openingCommands } = await import('#lib/spine/opening-commands.ts')
      for (const command of openingCommands(state.station, now.current - A_MOMENT_MS))
        if (!(await act(command, ''))) break
    }
    void fill().finally(() => setFilling(false))
  }, [state, act])

  const open = async (kind: 'demo' | 'real') => {
    if (!station || busy || isDayWrong(day)) return
    fillsNext.current = kind === 'demo'
    const isOpen = await act({ type: 'open', station: station.id, kind, ...dayCommand(day) }, '')
    if (!isOpen) fillsNext.current = false
  }

  const toLoad = isRunning(state) && state.stage === 'open' ? usualLoads(state).length : 0
  const isOpen = isRunning(state) && state.stage === 'open'

  const standing = (): readonly string[] => {
    if (!isRunning(state)) {
      if (!isKnown) return [words.connecting]
      return [station ? words.none : words.noStation]
    }
    const { name, timeZone } = state.station
    if (state.closedAt !== null)
      return [words.closed(name, words.sayClock(state.closedAt, timeZone)), words.none]
    const since = words.sayClock(state.openedAt, timeZone)
    return [
      state.kind === 'demo' ? words.openDemo(name, since) : words.open(name, since),
      ...(state.kind === 'demo' ? [words.demoCloses, words.demoInvented] : []),
      isFilling ? words.filling : toLoad > 0 ? words.notLoaded(toLoad) : words.loaded,
    ]
  }

  return (
    <div className={styles.serviceNow}>
      <div className={styles.now} data-open={isOpen}>
        {standing().map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
      {isOpen && isRunning(state) && <DayPlan key={state.service} state={state} />}
      {!isOpen && <DayFields day={day} onDay={setDay} />}
      {isOpen ? (
        <div className={styles.choices}>
          <a
            className={styles.choice}
            data-kind="main"
            href={(toLoad > 0 ? '/pans' : '/counter') + location.search}
          >
            <b>{toLoad > 0 ? words.toPans : words.toCounter}</b>
          </a>
        </div>
      ) : (
        <div className={styles.choices}>
          <button
            type="button"
            className={styles.choice}
            data-kind="main"
            disabled={!station || !isKnown || busy || isDayWrong(day)}
            onClick={() => void open(isDemo ? 'demo' : 'real')}
          >
            <b>{isDemo ? words.startDemo : words.startReal}</b>
            <span>{isDemo ? words.startDemoWhat : words.startRealWhat}</span>
          </button>
        </div>
      )}
      <p role="status" className={styles.said} data-kind={said?.kind ?? 'none'}>
        {isFilling
          ? words.filling
          : busy
            ? words.opening
            : said?.kind === 'refused'
              ? said.text
              : ''}
      </p>
      {isKnown && station && !isDemo && <PlannedList />}
      <Connection />
    </div>
  )
}
