import styles from '#components/counter/counter.module.css'
import { sayNote } from '#components/counter/say-note.ts'
import { useCrew } from '#components/live/crew.tsx'
import { nameIn } from '#lib/menu/name-in.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { Act } from '#lib/views/order-act.ts'
import type { Ordering, Returned } from '#lib/views/ordering.ts'
import { counter } from '#lib/words/counter-en.ts'

interface WaitingOrdersProps {
  readonly state: RunningState
  readonly ordering: Ordering
  readonly tap: (act: Act) => void
}

/** Orders that aren't sold yet: those that wait for the connection, and those that came back. */
export function WaitingOrders({ state, ordering, tap }: WaitingOrdersProps) {
  const pending = useCrew((view) => view.pending)
  const waiting = pending.filter((one) => one.command.type === 'send').length
  return (
    <>
      {waiting > 0 && <p className={styles.waiting}>{counter.waiting(waiting)}</p>}
      {ordering.returned.map((one) => (
        <CameBack key={one.id} state={state} returned={one} tap={tap} />
      ))}
    </>
  )
}

function CameBack({
  state,
  returned: { id, order, note },
  tap,
}: {
  readonly state: RunningState
  readonly returned: Returned
  readonly tap: (act: Act) => void
}) {
  const name = nameIn(state.station)
  const items = order.drafts.flatMap(({ item }) => (item === null ? [] : [name(item)]))
  return (
    <div className={styles.cameBack} role="alert">
      <p>
        <strong>{counter.cameBack(items.join(', '))}</strong>{' '}
        {note ? sayNote(state.station, note) : counter.cameBackWhy}
      </p>
      <button
        type="button"
        className={styles.button}
        onClick={() => tap({ act: 'open-returned', id })}
      >
        {counter.openAgain}
      </button>
      <button
        type="button"
        className={styles.button}
        onClick={() => tap({ act: 'drop-returned', id })}
      >
        {counter.forget}
      </button>
    </div>
  )
}
