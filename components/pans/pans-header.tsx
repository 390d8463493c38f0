import { Awake } from '#components/device/awake-notice.tsx'
import type { Said } from '#components/live/acting.ts'
import { Connection } from '#components/live/connection.tsx'
import { useServerTime } from '#components/live/server-time.ts'
import styles from '#components/pans/pans-header.module.css'
import { usePansWords } from '#components/pans/words.tsx'
import { queueOf } from '#lib/rooms/pans/facts/pans.ts'
import { unpaidTickets } from '#lib/rooms/shelf/facts/unpaid.ts'
import type { RunningState } from '#lib/service/state.ts'

interface PansHeaderProps {
  readonly state: RunningState
  readonly said: Said | null
  readonly busy: boolean
  readonly onClose: () => void
  readonly onUnpaid: () => void
}

export function PansHeader({ state, said, busy, onClose, onUnpaid }: PansHeaderProps) {
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
    <header className={styles.header}>
      <div className={styles.title}>
        <h1>
          {words.title}{' '}
          <span className={styles.inCharge} data-on={state.inCharge !== null}>
            {state.inCharge === null
              ? words.first.noOneInCharge
              : words.first.inChargeSince(words.sayClock(state.inCharge, timeZone))}
          </span>
        </h1>
        <p>
          {words.openSince(words.sayClock(now, timeZone), words.sayClock(state.openedAt, timeZone))}
          {state.kind === 'demo' && <span className={styles.demo}>{words.demo}</span>}
        </p>
      </div>
      <ul className={styles.queue} aria-label={words.queue}>
        {counts.map(({ label, count }) => (
          <li key={label} data-some={count > 0}>
            <b>{count}</b> <span>{label}</span>
            {label === words.waiting && queue.waitingSince !== null && (
              <small>{words.longest(words.sayLength(now - queue.waitingSince))}</small>
            )}
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
      <div className={styles.link}>
        <Connection />
        <Awake />
        <p role="status" className={styles.said} data-kind={said?.kind ?? 'none'}>
          {busy ? words.waitingToSend : said?.text}
        </p>
      </div>
      <button type="button" className={styles.close} onClick={onClose}>
        {words.closeService}
      </button>
    </header>
  )
}
