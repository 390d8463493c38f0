import styles from '#components/counter/counter.module.css'
import type { RunningState } from '#lib/service/state.ts'
import { buildName, findBuild } from '#lib/service/tickets.ts'
import { ticketSentBy } from '#lib/views/counter.ts'
import { waitOfTicket } from '#lib/views/guest-wait.ts'
import type { Sent } from '#lib/views/ordering.ts'
import { counter } from '#lib/words/counter-en.ts'

export interface SentWords {
  readonly big: string
  readonly small: string
  readonly spoken: string
}

/** What to tell the guest of what was just sent; null where nothing was. */
export const useSentWords = (state: RunningState, sent: readonly Sent[]): SentWords | null => {
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
  const words = [
    ...(numbers.length > 0 ? [counter.ticket(numbers)] : []),
    ...(changed.length > 0 ? [counter.changedSent(changed)] : []),
    ...(cancelled.length > 0 ? [counter.cancelledSent(cancelled)] : []),
    ...(stopping.length > 0 ? [counter.stopSent(stopping)] : []),
  ]
  if (words.length === 0) return null
  const big = words.join(' · ')
  const wait = numbers.length > 0 ? waitOfTicket(state, Math.max(...numbers)) : null
  const small = wait
    ? counter.tellGuestWait(wait)
    : numbers.length > 0
      ? counter.tellGuestNumber
      : counter.tellGuestThis
  return { big, small, spoken: counter.spokenSent(big) }
}

export function SentBanner({ words }: { readonly words: SentWords }) {
  return (
    <p className={styles.sent} data-sent="">
      <strong>{words.big}</strong>
      <span>{words.small}</span>
    </p>
  )
}
