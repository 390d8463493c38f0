import type { Acting } from '#components/live/acting.ts'
import styles from '#components/pans/panel.module.css'
import { Panel } from '#components/pans/panel.tsx'
import { useSettled } from '#components/ui/settled.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName, openBuilds } from '#lib/service/tickets.ts'
import { pansWords as words } from '#lib/words/pans-en.ts'
import { stateName } from '#lib/words/service-en.ts'

interface ClosePanelProps {
  readonly state: RunningState
  readonly acting: Acting
  readonly onBack: () => void
}

/** Asks before closing; while builds are open, says which. */
export function ClosePanel({ state, acting, onBack }: ClosePanelProps) {
  const settled = useSettled('close')
  const builds = openBuilds(state)
  const isReady = builds.length === 0
  const close = async () => {
    if (settled() && !acting.busy) await acting.act({ type: 'close' }, words.done.closed)
  }
  return (
    <Panel title={isReady ? words.closeTitle : words.notYetTitle} onBack={onBack}>
      <div className={styles.doing}>
        <p>{isReady ? words.closeWhy : words.notYetWhy(builds.length)}</p>
        {!isReady && (
          <ul className={styles.builds}>
            {builds.map(({ ticket, build }) => (
              <li key={buildName(ticket.number, build.letter)}>
                <b>{buildName(ticket.number, build.letter)}</b> {stateName[build.state]}
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
