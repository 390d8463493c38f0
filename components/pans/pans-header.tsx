import type { ReactNode } from 'react'
import { Awake } from '#components/device/awake-notice.tsx'
import type { Said } from '#components/live/acting.ts'
import { Connection } from '#components/live/connection.tsx'
import { useServerTime } from '#components/live/server-time.ts'
import styles from '#components/pans/pans-header.module.css'
import { usePansWords } from '#components/pans/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { queueOf } from '#lib/rooms/pans/facts/pans.ts'
import { unpaidTickets } from '#lib/rooms/shelf/facts/unpaid.ts'
import type { RunningState } from '#lib/service/state.ts'

interface PansHeaderProps {
  readonly state: RunningState
  readonly said: Said | null
  readonly busy: boolean
  readonly rushUntil: number | null
  /** The title of the job that is open, with its way back; null: the board's own. */
  readonly job: ReactNode | null
  readonly onClose: () => void
  readonly onUnpaid: () => void
}

/** Of the whole service: who is in charge, how many wait, and the way to its end. */
function BoardTitle({
  state,
  rushUntil,
  onUnpaid,
}: Pick<PansHeaderProps, 'state' | 'rushUntil' | 'onUnpaid'>) {
  const words = usePansWords()
  const now = useServerTime()
  const queue = queueOf(state)
  const unpaid = unpaidTickets(state).length
  const { timeZone } = state.station
  const counts = [
    { label: words.waiting, count: queue.waiting },
    { label: words.making, count: queue.making },
    { label: words.onShelf, count: queue.made },
    { label: words.handedOver, count: queue.handedOver },
  ]
  return (
    <>
      <div className={styles.title}>
        <h1>{words.title}</h1>
        <p>
          <b data-on={state.inCharge !== null}>
            {state.inCharge === null
              ? words.first.noOneInCharge
              : words.first.inChargeSince(words.sayClock(state.inCharge, timeZone))}
          </b>
          <br />
          <span>
            {rushUntil === null
              ? words.openSince(
                  words.sayClock(now, timeZone),
                  words.sayClock(state.openedAt, timeZone),
                )
              : words.advice.rush(words.sayTime(rushUntil, timeZone))}
          </span>
        </p>
      </div>
      <ul className={styles.queue} aria-label={words.queue}>
        {counts.map(({ label, count }) => (
          <li key={label} data-some={count > 0}>
            <b>{count}</b>
            <span>
              {label}
              {label === words.waiting && queue.waitingSince !== null && (
                <small>{words.sayLength(now - queue.waitingSince)}</small>
              )}
            </span>
          </li>
        ))}
        {unpaid > 0 && (
          <li>
            <button type="button" className={styles.unpaid} onClick={onUnpaid}>
              {words.notPaid(unpaid)}
            </button>
          </li>
        )}
      </ul>
    </>
  )
}

export function PansHeader(props: PansHeaderProps) {
  const words = usePansWords()
  const { said, busy, job, onClose } = props
  // In the panel of the job, where it is mended.
  const isSaidBelow = job !== null && said?.kind === 'refused'
  return (
    <header className={styles.header}>
      {job ?? <BoardTitle {...props} />}
      <div className={styles.link}>
        <p role="status" className={styles.said} data-kind={said?.kind ?? 'none'}>
          {busy ? words.waitingToSend : isSaidBelow ? null : said?.text}
        </p>
        <Connection />
        <Awake />
      </div>
      {job === null && (
        <Button kind="quiet" className={styles.close} onClick={onClose}>
          {words.closeService}
        </Button>
      )}
    </header>
  )
}
