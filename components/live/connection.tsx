'use client'

import styles from '#components/live/connection.module.css'
import { useCrew } from '#components/live/crew.tsx'
import { useMonotonic } from '#components/live/server-time.ts'
import { useWords } from '#components/live/words.tsx'

/** A server that says nothing for this long counts as lost, whatever the socket believes. */
const SILENT_AFTER_MS = 8_000

/** From here on the age of its last word is shown; it says one each second or two. */
const OLD_AFTER_MS = 4_000

/**
 * Whether this screen is live: a dot while it is, in words with the age of what it shows once it
 * isn't; and what waits to be sent.
 */
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
  const isOld = state === 'live' && (age ?? 0) >= OLD_AFTER_MS
  return (
    <div className={styles.connection} data-state={state} data-old={isOld || undefined}>
      <span className={styles.sign} aria-hidden="true" />
      <strong role="status" className={state === 'live' ? 'visually-hidden' : undefined}>
        {said}
      </strong>
      {age !== null && (isOld || state === 'lost') && (
        <span>{live.heard(Math.round(age / 1000))}</span>
      )}
      {pending > 0 && <span className={styles.pending}>{live.pending(pending)}</span>}
    </div>
  )
}
