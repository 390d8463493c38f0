import { useEffect, useRef } from 'react'
import { useActing } from '#components/live/acting.ts'
import { Connection } from '#components/live/connection.tsx'
import { useCrew } from '#components/live/crew.tsx'
import styles from '#components/start/start.module.css'
import { isRunning } from '#lib/service/state.ts'
import { usualLoads } from '#lib/views/pans-to-do.ts'
import { sayClock } from '#lib/words/clock-en.ts'
import { startWords as words } from '#lib/words/start-en.ts'

/** Whether a service is open and since when; opens one. */
export function ServiceCard() {
  const isKnown = useCrew(
    (view) =>
      view.welcome !== null && (view.service === null || view.service === view.state.service),
  )
  const station = useCrew((view) => view.welcome?.station ?? null)
  const state = useCrew((view) => view.state)
  const { act, busy, said } = useActing()
  const loadsNext = useRef(false)

  useEffect(() => {
    if (!loadsNext.current || !isRunning(state) || state.stage !== 'open') return
    loadsNext.current = false
    for (const load of usualLoads(state)) void act({ type: 'load', ...load }, words.loaded)
  }, [state, act])

  const open = async (kind: 'demo' | 'real') => {
    if (!station || busy) return
    loadsNext.current = kind === 'demo'
    const isOpen = await act({ type: 'open', station: station.id, kind }, '')
    if (!isOpen) loadsNext.current = false
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
      return [words.closed(name, sayClock(state.closedAt, timeZone)), words.none]
    const since = sayClock(state.openedAt, timeZone)
    return [
      state.kind === 'demo' ? words.openDemo(name, since) : words.open(name, since),
      ...(state.kind === 'demo' ? [words.demoCloses] : []),
      toLoad > 0 ? words.notLoaded(toLoad) : words.loaded,
    ]
  }

  return (
    <div className={styles.serviceNow}>
      <div className={styles.standing} data-open={isOpen}>
        {standing().map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
      {isOpen ? (
        <div className={styles.choices}>
          <a className={styles.choice} data-kind="main" href={toLoad > 0 ? '/pans' : '/counter'}>
            <b>{toLoad > 0 ? words.toPans : words.toCounter}</b>
          </a>
        </div>
      ) : (
        <div className={styles.choices}>
          <button
            type="button"
            className={styles.choice}
            data-kind="main"
            disabled={!station || !isKnown || busy}
            onClick={() => void open('demo')}
          >
            <b>{words.startDemo}</b>
            <span>{words.startDemoWhat}</span>
          </button>
          <button
            type="button"
            className={styles.choice}
            disabled={!station || !isKnown || busy}
            onClick={() => void open('real')}
          >
            <b>{words.startReal}</b>
            <span>{words.startRealWhat}</span>
          </button>
        </div>
      )}
      <p role="status" className={styles.said} data-kind={said?.kind ?? 'none'}>
        {busy ? words.opening : said?.kind === 'refused' ? said.text : ''}
      </p>
      <Connection />
    </div>
  )
}
