import styles from '#components/counter/counter.module.css'
import { useCounterWords } from '#components/counter/words.tsx'
import { waitOfTicket } from '#lib/rooms/orders/facts/guest-wait.ts'
import { ticketSentBy } from '#lib/rooms/orders/views/counter.ts'
import type { Sent } from '#lib/rooms/orders/views/ordering.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName, findBuild } from '#lib/service/tickets.ts'

export interface SentWords {
  readonly big: string
  readonly small: string
  readonly spoken: string
}

/** What to tell the guest of what was just sent; null where nothing was. */
export const useSentWords = (state: RunningState, sent: readonly Sent[]): SentWords | null => {
  const words = useCounterWords()
  const numbers = sent.flatMap((one) => {
    const number = one.kind === 'ticket' ? ticketSentBy(state, one.id) : null
    return number === null ? [] : [number]
  })
  const builds = (kind: 'changed' | 'cancelled' | 'stopping'): readonly string[] =>
    sent.flatMap((one) => {
      if (one.kind === 'ticket') return []
      const stops = findBuild(state, one.ticket, one.letter)?.stop?.reason === 'cancel'
      const is = one.kind === 'cancelled' && stops ? 'stopping' : one.kind
      return is === kind ? [buildName(one.ticket, one.letter)] : []
    })
  const [changed, cancelled, stopping] = [
    builds('changed'),
    builds('cancelled'),
    builds('stopping'),
  ]
  const said = [
    ...(numbers.length > 0 ? [words.ticket(numbers)] : []),
    ...(changed.length > 0 ? [words.changedSent(changed)] : []),
    ...(cancelled.length > 0 ? [words.cancelledSent(cancelled)] : []),
    ...(stopping.length > 0 ? [words.stopSent(stopping)] : []),
  ]
  if (said.length === 0) return null
  const big = said.join(' · ')
  const wait = numbers.length > 0 ? waitOfTicket(state, Math.max(...numbers)) : null
  const small = wait
    ? words.tellGuestWait(wait)
    : numbers.length > 0
      ? words.tellGuestNumber
      : words.tellGuestThis
  return { big, small, spoken: words.spokenSent(big) }
}

export function SentBanner({ words }: { readonly words: SentWords }) {
  return (
    <p className={styles.sent} data-sent="">
      <strong>{words.big}</strong>
      <span>{words.small}</span>
    </p>
  )
}
