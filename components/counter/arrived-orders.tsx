import styles from '#components/counter/arrived.module.css'
import { type CounterWords, useCounterWords } from '#components/counter/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { ticketSentBy } from '#lib/rooms/orders/views/counter.ts'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import type { Arrived } from '#lib/rooms/orders/views/ordering.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName } from '#lib/service/tickets.ts'
import { nameIn } from '#lib/station/name-in.ts'

/** What it is told as; null while this screen hasn't been told of its ticket. */
const whatOf = (words: CounterWords, state: RunningState, { sent }: Arrived): string | null => {
  const { arrived } = words.onTicket
  if (sent.kind !== 'ticket') return arrived[sent.kind](buildName(sent.ticket, sent.letter))
  const number = ticketSentBy(state, sent.id)
  return number === null ? null : arrived.ticket(number)
}

/** So many stand beside what is typed; the next ones come as these are told. */
const MOST = 2

/** Numbers of what waited to be sent, each until its guest was told, over whatever is typed. */
export function ArrivedOrders({
  state,
  arrived,
  tap,
}: {
  readonly state: RunningState
  readonly arrived: readonly Arrived[]
  readonly tap: (act: Act) => void
}) {
  const words = useCounterWords()
  const name = nameIn(state.station)
  return (
    <div className={styles.arrived}>
      <p role="status" className="visually-hidden">
        {words.onTicket.arrived.title}
      </p>
      <ul aria-label={words.onTicket.arrived.title}>
        {arrived.slice(0, MOST).map((one) => {
          const what = whatOf(words, state, one)
          if (what === null) return null
          const items = words.onTicket.arrived.items(one.items.map(name))
          return (
            <li key={one.id}>
              <Button
                kind="main"
                aria-label={words.onTicket.arrived.told(what, items)}
                sub={words.onTicket.arrived.short(one.items.map(name))}
                onClick={() => tap({ act: 'arrived-told', id: one.id })}
              >
                {what}
              </Button>
            </li>
          )
        })}
      </ul>
      {arrived.length > MOST && <p>{words.onTicket.arrived.more(arrived.length - MOST)}</p>}
    </div>
  )
}
