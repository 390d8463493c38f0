import { nanoid } from 'nanoid'
import { useCallback, useEffect, useRef, useState } from 'react'
import { useCrew, useSend } from '#components/live/crew.tsx'
import { useSelling } from '#components/live/selling.ts'
import type { Answer } from '#lib/protocol/wire.ts'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import { commandOf } from '#lib/rooms/orders/views/next-step.ts'
import { act } from '#lib/rooms/orders/views/order-act.ts'
import { isLeft } from '#lib/rooms/orders/views/order-answered.ts'
import { IDLE, type Note, type Ordering, type Step } from '#lib/rooms/orders/views/ordering.ts'
import type { Selling } from '#lib/rooms/pans/facts/selling.ts'
import type { RunningState } from '#lib/service/state.ts'

/** No answer for this long is shown as waiting, whatever the connection believes. */
const SLOW_MS = 1_500

export interface OrderingDesk {
  /** The service as this order finds it, were it sent now. */
  readonly state: Selling
  readonly ordering: Ordering
  readonly tap: (act: Act) => void
  readonly submit: () => void
  /** The order is sent and its answer is late. */
  readonly isLate: boolean
}

const noteOf = (answer: Exclude<Answer, { readonly answer: 'accepted' }>): Note =>
  answer.answer === 'refused'
    ? { kind: 'refused', refusal: answer.refusal }
    : { kind: 'not-taken', because: answer.because }

/**
 * Orders, changes and cancels that this screen didn't send itself: an earlier load of the page left
 * them waiting, or the list of tickets sent them. Says what became of each; the list says so itself
 * for as long as it is shown.
 */
const useLeftBehind = (own: ReadonlySet<string>, step: Step, tap: (act: Act) => void) => {
  const send = useSend()
  const pending = useCrew((view) => view.pending)
  const followed = useRef(new Set<string>())
  const saidByList = useRef(new Set<string>())
  useEffect(() => {
    if (step !== 'tickets') saidByList.current.clear()
    for (const { id, command } of pending) {
      if (own.has(id) || followed.current.has(id) || !isLeft(command)) continue
      followed.current.add(id)
      if (step === 'tickets') saidByList.current.add(id)
      void send(command, id).then((answer) => {
        if (saidByList.current.has(id)) return
        if (answer.answer === 'accepted') tap({ act: 'left-accepted', id, sent: command })
        else tap({ act: 'came-back', id, sent: command, note: noteOf(answer) })
      })
    }
  }, [pending, own, step, send, tap])
}

/** The order that this screen takes, and its way to the server. */
export const useOrdering = (told: RunningState): OrderingDesk => {
  const send = useSend()
  const link = useCrew((view) => view.link)
  const [ordering, setOrdering] = useState(IDLE)
  const state = useSelling(told, ordering.drafts.length)
  const [isSlow, setSlow] = useState(false)
  const newest = useRef(state)
  newest.current = state
  const own = useRef(new Set<string>())
  const tap = useCallback(
    (one: Act) => setOrdering((before) => act(before, one, newest.current)),
    [],
  )
  useLeftBehind(own.current, ordering.step, tap)
  useEffect(() => {
    setSlow(false)
    if (ordering.sending === null) return
    const timer = setTimeout(() => setSlow(true), SLOW_MS)
    return () => clearTimeout(timer)
  }, [ordering.sending])
  const isLate = ordering.sending !== null && (isSlow || link !== 'live')
  // It was told that it waits: so is its number, whatever is shown by then.
  const late = useRef(false)
  late.current = ordering.sending !== null && (late.current || isLate)
  const submit = async () => {
    const command = ordering.sending === null ? commandOf(ordering, state) : null
    if (!command) return
    const id = nanoid()
    own.current.add(id)
    tap({ act: 'send', id })
    const answer = await send(command, id)
    if (answer.answer === 'accepted') tap({ act: 'accepted', id, isLate: late.current })
    else tap({ act: 'refused', id, note: noteOf(answer) })
  }
  return {
    state,
    ordering,
    tap,
    submit: () => void submit(),
    isLate,
  }
}
