import { Awake } from '#components/device/awake-notice.tsx'
import { SoundToggle } from '#components/device/sound-toggle.tsx'
import styles from '#components/hand-over/hand-over.module.css'
import { useHandOverWords } from '#components/hand-over/words.tsx'
import type { Said } from '#components/live/acting.ts'
import { Connection } from '#components/live/connection.tsx'
import { Button } from '#components/ui/button.tsx'
import type { UnpaidList } from '#lib/rooms/shelf/views/unpaid-list.ts'

/** What was done last, and the ways to what is gone already. */
export function Top({
  said,
  count,
  unpaid,
  handedOver,
  money,
  onUnpaid,
  onRecent,
}: {
  readonly said: Said | null
  /** How many stand there, where they don't fit in sight; else null. */
  readonly count: number | null
  readonly unpaid: UnpaidList
  /** null where nothing was. */
  readonly handedOver: number | null
  readonly money: (cents: number) => string
  readonly onUnpaid: () => void
  readonly onRecent: () => void
}) {
  const words = useHandOverWords()
  return (
    <header className={styles.top}>
      <h1>{words.title}</h1>
      <p className={styles.said} role="status" data-kind={said?.kind ?? 'none'}>
        {said?.text}
      </p>
      {count !== null && <p className={styles.slides}>{words.slides(count)}</p>}
      <Connection />
      <SoundToggle />
      <Awake />
      {unpaid.tickets.length > 0 && (
        <Button kind="quiet" className={styles.list} sub={money(unpaid.cents)} onClick={onUnpaid}>
          {words.unpaidCount(unpaid.tickets.length)}
        </Button>
      )}
      {handedOver !== null && (
        <Button
          kind="quiet"
          className={styles.list}
          sub={words.recentCount(handedOver)}
          onClick={onRecent}
        >
          {words.recent}
        </Button>
      )}
    </header>
  )
}
