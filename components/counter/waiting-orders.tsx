import styles from '#components/counter/counter.module.css'
import { LacksList, lacksIn } from '#components/counter/note-said.tsx'
import { sayNote } from '#components/counter/say-note.ts'
import { useCounterWords } from '#components/counter/words.tsx'
import { useCrew } from '#components/live/crew.tsx'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import type { Order, Ordering, Returned } from '#lib/rooms/orders/views/ordering.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName } from '#lib/service/tickets.ts'
import { nameIn } from '#lib/station/name-in.ts'

interface WaitingOrdersProps {
  readonly state: RunningState
  readonly ordering: Ordering
  readonly tap: (act: Act) => void
}

/** Orders that aren't sold yet: those that wait for the connection, and those that came back. */
export function WaitingOrders({ state, ordering, tap }: WaitingOrdersProps) {
  const words = useCounterWords()
  const pending = useCrew((view) => view.pending)
  const waiting = pending.filter((one) => one.command.type === 'send').length
  return (
    <>
      {waiting > 0 && <p className={styles.waiting}>{words.waiting(waiting)}</p>}
      {pending.map(({ id, command }) =>
        command.type === 'change' || command.type === 'cancel' ? (
          <p key={id} className={styles.waiting}>
            {words.waitingFor(command.type, buildName(command.ticket, command.letter))}
          </p>
        ) : command.type === 'tellNeed' ? (
          <p key={id} className={styles.waiting} role="alert">
            {words.waitingToTell(buildName(command.ticket, command.letter))}
          </p>
        ) : null,
      )}
      {ordering.returned.map((one) => (
        <CameBack key={one.id} state={state} returned={one} tap={tap} />
      ))}
    </>
  )
}

const itemNames = (state: RunningState, { drafts }: Order): string => {
  const name = nameIn(state.station)
  return drafts.flatMap(({ item }) => (item === null ? [] : [name(item)])).join(', ')
}

function CameBack({
  state,
  returned,
  tap,
}: {
  readonly state: RunningState
  readonly returned: Returned
  readonly tap: (act: Act) => void
}) {
  const words = useCounterWords()
  const { id, kind } = returned
  const drafts = returned.kind === 'cancel' ? [] : returned.order.drafts
  const lacks = lacksIn(state.station, returned.note, drafts)
  const why = lacks ? '' : sayNote(words, state.station, returned.note)
  return (
    <div className={styles.cameBack} role="alert">
      <p>
        {kind === 'order' ? (
          <>
            <strong>{words.cameBack(itemNames(state, returned.order))}</strong> {why}
          </>
        ) : (
          <strong>{words.notTaken(kind, buildName(returned.ticket, returned.letter), why)}</strong>
        )}
      </p>
      {lacks && <LacksList station={state.station} builds={lacks} />}
      {kind === 'cancel' ? (
        <button type="button" className={styles.button} onClick={() => tap({ act: 'tickets' })}>
          {words.tickets}
        </button>
      ) : (
        <button
          type="button"
          className={styles.button}
          onClick={() => tap({ act: 'open-returned', id })}
        >
          {words.openAgain}
        </button>
      )}
      <button
        type="button"
        className={styles.button}
        onClick={() => tap({ act: 'drop-returned', id })}
      >
        {kind === 'order' ? words.forget : words.leaveUnchanged}
      </button>
    </div>
  )
}
