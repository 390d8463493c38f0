import { nanoid } from 'nanoid'
import { useCallback, useEffect, useRef, useState } from 'react'
import { useCrew, useSend } from '#components/live/crew.tsx'
import type { RunningState } from '#lib/service/state.ts'
import type { Pending } from '#lib/sync/outbox.ts'
import { ticketSentBy } from '#lib/views/counter.ts'
import { type Act, act } from '#lib/views/order-act.ts'
import { commandOf, IDLE, type Ordering } from '#lib/views/ordering.ts'

/** No answer for this long is shown as waiting, whatever the connection believes. */
const SLOW_MS = 1_500

export interface OrderingDesk {
  readonly ordering: Ordering
  readonly tap: (act: Act) => void
  readonly submit: () => void
  /** The order is sent and its answer is late. */
  readonly isLate: boolean
}

/** Orders that an earlier load of this page left waiting: says what became of each. */
const useLeftBehind = (state: RunningState, own: ReadonlySet<string>, tap: (act: Act) => void) => {
  const pending = useCrew((view) => view.pending)
  const known = useRef(new Map<string, Pending>())
  useEffect(() => {
    for (const [id, { command }] of known.current) {
      if (pending.some((one) => one.id === id)) continue
      known.current.delete(id)
      if (own.has(id) || command.type !== 'send') continue
      if (ticketSentBy(state, id) !== null) tap({ act: 'accepted', id })
      else tap({ act: 'came-back', id, choices: command.builds })
    }
    for (const one of pending) known.current.set(one.id, one)
  }, [pending, own, state, tap])
}

/** The order that this screen takes, and its way to the server. */
export const useOrdering = (state: RunningState): OrderingDesk => {
  const send = useSend()
  const link = useCrew((view) => view.link)
  const [ordering, setOrdering] = useState(IDLE)
  const [isSlow, setSlow] = useState(false)
  const newest = useRef(state)
  newest.current = state
  const own = useRef(new Set<string>())
  const tap = useCallback(
    (one: Act) => setOrdering((before) => act(before, one, newest.current)),
    [],
  )
  useLeftBehind(state, own.current, tap)
  useEffect(() => {
    setSlow(false)
    if (ordering.sending === null) return
    const timer = setTimeout(() => setSlow(true), SLOW_MS)
    return () => clearTimeout(timer)
  }, [ordering.sending])
  const submit = async () => {
    const command = ordering.sending === null ? commandOf(ordering, state) : null
    if (!command) return
    const id = nanoid()
    own.current.add(id)
    tap({ act: 'send', id })
    const answer = await send(command, id)
    if (answer.answer === 'accepted') tap({ act: 'accepted', id })
    else
      tap({
        act: 'refused',
        id,
        note:
          answer.answer === 'refused'
            ? { kind: 'refused', refusal: answer.refusal }
            : { kind: 'not-taken', because: answer.because },
      })
  }
  return {
    ordering,
    tap,
    submit: () => void submit(),
    isLate: ordering.sending !== null && (isSlow || link !== 'live'),
  }
}
