import styles from '#components/counter/counter.module.css'
import type { RunningState } from '#lib/service/state.ts'
import { ticketSentBy } from '#lib/views/counter.ts'
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
  const changed = sent.flatMap((one) => (one.kind === 'changed' ? [one.build] : []))
  if (numbers.length === 0 && changed.length === 0) return null
  const big = numbers.length > 0 ? counter.ticket(numbers) : counter.changedSent(changed)
  return { big, small: counter.tellGuest, spoken: counter.spokenSent(big) }
}

export function SentBanner({ words }: { readonly words: SentWords }) {
  return (
    <p className={styles.sent} data-sent="">
      <strong>{words.big}</strong>
      <span>{words.small}</span>
    </p>
  )
}
