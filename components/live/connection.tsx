'use client'

import styles from '#components/live/connection.module.css'
import { useCrew } from '#components/live/crew.tsx'
import { useMonotonic } from '#components/live/server-time.ts'
import { useWords } from '#components/live/words.tsx'

/** A server that says nothing for this long counts as lost, whatever the socket believes. */
const SILENT_AFTER_MS = 8_000

/** Whether this screen is live, how old the server's last word is, and what waits to be sent. */
export function Connection() {
  const live = useWords()
  const link = useCrew((view) => view.link)
  const heardAt = useCrew((view) => view.heardAt)
  const pending = useCrew((view) => view.pending.length)
  const now = useMonotonic()
  const age = heardAt === null ? null : Math.max(0, now - heardAt)
  const state =
    link === 'connecting'
      ? 'connecting'
      : link === 'live' && (age ?? 0) < SILENT_AFTER_MS
        ? 'live'
        : 'lost'
  const said = { connecting: live.connecting, live: live.isLive, lost: live.isLost }[state]
  return (
    <div className={styles.connection} data-state={state}>
      <span className={styles.sign} aria-hidden="true" />
      <strong role="status">{said}</strong>
      {age !== null && <span className={styles.age}>{live.heard(Math.round(age / 1000))}</span>}
      {pending > 0 && <span className={styles.pending}>{live.pending(pending)}</span>}
    </div>
  )
}
