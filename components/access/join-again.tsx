import { useEffect, useRef } from 'react'
import { ByCode } from '#components/access/by-code.tsx'
import styles from '#components/access/page.module.css'
import standing from '#components/access/standing.module.css'
import { useAccess } from '#components/access/use-access.ts'
import { roleAt, WAY_OF } from '#components/access/ways.ts'
import { useAccessWords } from '#components/access/words.tsx'
import { Note } from '#components/ui/note.tsx'
import type { AccessNow, ConnectRefusal } from '#lib/access/http.ts'

const LOOK_EVERY_MS = 3_000

type Because = Exclude<ConnectRefusal, 'busy' | 'not-the-protocol'>

/**
 * Over a screen that isn't let in: why, what waits on it, and a code in place, so that nothing that
 * was typed or has yet to be sent is lost. The connection is tried again by itself meanwhile.
 */
export function JoinAgain({
  because,
  waits,
}: {
  readonly because: Because
  /** Commands that have yet to be sent from here. */
  readonly waits: number
}) {
  const words = useAccessWords()
  const { seen, again } = useAccess<AccessNow>('/access', LOOK_EVERY_MS)
  const dialog = useRef<HTMLDialogElement>(null)
  useEffect(() => dialog.current?.showModal(), [])
  const role = roleAt(location.pathname)
  const you = seen?.you ?? null
  const { title, what } = {
    expired: { title: words.shut.title, what: words.shut.how(role) },
    removed: { title: words.shut.removed, what: words.shut.removedWhat },
    'role-not-yours': { title: words.shut.notYours(role), what: words.shut.notYoursWhat },
    'not-joined': { title: words.shut.stranger, what: words.shut.strangerWhat },
    'demo-closed': { title: words.shut.demoClosed, what: words.shut.demoClosedWhat },
  }[because]
  return (
    <dialog
      ref={dialog}
      className={standing.dialog}
      aria-labelledby="join-again"
      onCancel={(event) => event.preventDefault()}
    >
      <div className={standing.again} data-refused={because}>
        <h1 id="join-again">{title}</h1>
        {waits > 0 && (
          <p className={standing.waits} role="status">
            {because === 'role-not-yours' ? words.join.waits(waits, role) : words.shut.waits(waits)}
          </p>
        )}
        <p>{what}</p>
        {because === 'role-not-yours' && you !== null && (
          <div className={styles.acts}>
            <a className={styles.way} href={WAY_OF[you.role] + location.search}>
              {words.shut.toOwn(you.role)}
            </a>
          </div>
        )}
        {because === 'demo-closed' ? null : seen?.house === 'none' ? (
          <Note kind="watch">{words.refused['no-house']}</Note>
        ) : (
          <ByCode onIn={() => void again()} />
        )}
        <div className={styles.links}>
          <a href="/">{words.toFirstPage}</a>
        </div>
      </div>
    </dialog>
  )
}
