import styles from '#components/job/panel.module.css'
import { Panel } from '#components/job/panel.tsx'
import { useFoodWords } from '#components/job/use-food-words.ts'
import type { Acting } from '#components/live/acting.ts'
import { useServerTime } from '#components/live/server-time.ts'
import { useSettled } from '#components/ui/settled.ts'
import { notYetClosed } from '#lib/rooms/day/facts/not-yet-closed.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName, openBuilds, sayBuild } from '#lib/service/tickets.ts'
import { nameIn } from '#lib/station/name-in.ts'

interface ClosePanelProps {
  readonly state: RunningState
  readonly acting: Acting
  readonly onBack: () => void
}

/** Asks before closing; where it can't be closed yet, says all that is in the way. */
export function ClosePanel({ state, acting, onBack }: ClosePanelProps) {
  const words = useFoodWords()
  const settled = useSettled('close')
  const builds = openBuilds(state)
  const now = useServerTime()
  const ways = notYetClosed(state, now)
  const isReady = ways.length === 0
  const close = async () => {
    if (settled() && !acting.busy) await acting.act({ type: 'close' }, words.done.closed)
  }
  return (
    <Panel title={isReady ? words.closeTitle : words.notYetTitle} onBack={onBack}>
      <div className={styles.doing}>
        {isReady && <p>{words.closeWhy}</p>}
        {ways.map((way) => (
          <p key={way.code}>
            {way.code === 'builds-open'
              ? words.notYetWhy(builds.length)
              : words.sayRefusal(way, nameIn(state.station))}
          </p>
        ))}
        {builds.length > 0 && (
          <ul className={styles.builds}>
            {builds.map(({ ticket, build }) => (
              <li key={buildName(ticket.number, build.letter)}>
                <b>{sayBuild(buildName(ticket.number, build.letter))}</b>{' '}
                {words.stateName[build.state]}
              </li>
            ))}
          </ul>
        )}
      </div>
      <div className={styles.acts}>
        {isReady && (
          <button
            type="button"
            className={styles.stop}
            disabled={acting.busy}
            onClick={() => void close()}
          >
            {words.closeNow}
          </button>
        )}
        <button type="button" className={styles.other} onClick={onBack}>
          {words.closeNot}
        </button>
      </div>
    </Panel>
  )
}
