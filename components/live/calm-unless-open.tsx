import type { ReactNode } from 'react'
import styles from '#components/live/calm-unless-open.module.css'
import { Connection } from '#components/live/connection.tsx'
import { useCrew } from '#components/live/crew.tsx'
import { useServiceStage } from '#components/live/service-stage.ts'
import { useWords } from '#components/live/words.tsx'
import { isRunning, type RunningState } from '#lib/service/state.ts'

/** The service while it is open; a calm sentence while it isn't, or isn't known yet. */
export function CalmUnlessOpen({
  className,
  children,
}: {
  readonly className: string | undefined
  readonly children: (state: RunningState) => ReactNode
}) {
  const live = useWords()
  const stage = useServiceStage()
  const state = useCrew((view) => view.state)
  if (stage === 'open' && isRunning(state)) return children(state)
  const said = {
    open: live.connecting,
    connecting: live.connecting,
    'no-service': live.notOpen,
    closed: live.closed,
  }[stage]
  return (
    <div className={className}>
      <h1>{said}</h1>
      <Connection />
      {stage !== 'connecting' && (
        <a className={styles.link} href={`/${location.search}`}>
          {live.toFirstPage}
        </a>
      )}
    </div>
  )
}
