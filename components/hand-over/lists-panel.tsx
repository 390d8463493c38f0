import type { ReactNode } from 'react'
import styles from '#components/hand-over/lists.module.css'
import { useHandOverWords } from '#components/hand-over/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Panel } from '#components/ui/panel.tsx'
import { useSettled } from '#components/ui/settled.ts'
import type { HandedOver } from '#lib/rooms/shelf/views/hand-over.ts'
import type { Unpaid, UnpaidList } from '#lib/rooms/shelf/views/unpaid-list.ts'
import { sayBuild } from '#lib/service/tickets.ts'

/** What was handed over last, with a way back. */
export function RecentPanel({
  recent,
  now,
  onWrong,
  onBack,
}: {
  readonly recent: readonly HandedOver[]
  readonly now: number
  readonly onWrong: (name: string) => void
  readonly onBack: () => void
}) {
  const words = useHandOverWords()
  return (
    <Panel title={words.recent} label={words.recent} back={words.back} onBack={onBack}>
      <ul className={styles.list}>
        {recent.map((one) => (
          <li key={one.name}>
            <b>{sayBuild(one.name)}</b>
            <span>
              {one.item} <small>{words.ago(now - one.at)}</small>
            </span>
            <Button
              kind="quiet"
              aria-label={words.wrongOf(one.name)}
              onClick={() => onWrong(one.name)}
            >
              {words.wrong}
            </Button>
          </li>
        ))}
      </ul>
    </Panel>
  )
}

/** What was given out and isn't paid: one row a ticket, paid as one sum. */
export function UnpaidPanel({
  list,
  currency,
  now,
  busy,
  onPaid,
  more,
  onBack,
}: {
  readonly list: UnpaidList
  readonly currency: string
  readonly now: number
  readonly busy: boolean
  readonly onPaid: (unpaid: Unpaid) => void
  /** What else may be done to one. */
  readonly more?: (unpaid: Unpaid) => ReactNode
  /** null where there is nowhere to go back to. */
  readonly onBack: (() => void) | null
}) {
  const words = useHandOverWords()
  const title =
    list.tickets.length === 0
      ? words.nothingUnpaid
      : words.unpaidTitle(words.sayCents(list.cents, currency))
  // As one is paid the next comes under the same finger.
  const isSettled = useSettled(list.tickets.map(({ ticket }) => ticket).join())
  return (
    <Panel title={title} label={title} {...(onBack ? { back: words.toBefore, onBack } : {})}>
      <ul className={styles.list}>
        {list.tickets.map((one) => (
          <li key={one.ticket}>
            <b>{one.names.map(sayBuild).join(', ')}</b>
            <span>
              <b>{words.sayCents(one.cents, currency)}</b>{' '}
              <small>{words.ago(now - one.since)}</small>
            </span>
            <Button
              aria-label={words.ticketPaid(one.ticket)}
              disabled={busy}
              onClick={() => {
                if (isSettled()) onPaid(one)
              }}
            >
              {words.pay}
            </Button>
            {more?.(one)}
          </li>
        ))}
      </ul>
    </Panel>
  )
}
