import { useEffect, useLayoutEffect, useRef } from 'react'
import { AskStep } from '#components/counter/ask-step.tsx'
import { ChooseStep } from '#components/counter/choose-step.tsx'
import styles from '#components/counter/counter.module.css'
import { NotSureStep } from '#components/counter/not-sure-step.tsx'
import { sayNote } from '#components/counter/say-note.ts'
import { useSentWords } from '#components/counter/sent-banner.tsx'
import { TicketsStep } from '#components/counter/tickets-step.tsx'
import { useOrdering } from '#components/counter/use-ordering.ts'
import type { RunningState } from '#lib/service/state.ts'
import { settleAll, toSayAgain } from '#lib/views/ordering.ts'

/** A second tap within this time was meant for what stood there before. */
const DOUBLE_TAP_MS = 400

/** Taking orders while a service is open: one step at a time. */
export function OrderDesk({ state }: { readonly state: RunningState }) {
  const desk = useOrdering(state)
  const { ordering, tap } = desk
  const { step, current, sending, sent, note } = ordering
  const sentWords = useSentWords(state, sent)
  const place = useRef<HTMLDivElement>(null)
  const stood = `${step} ${current}`
  const again = step === 'choose' ? toSayAgain(ordering, settleAll(ordering, state)) : null
  const buttons = `${stood} ${again}`
  const shown = useRef(buttons)
  useLayoutEffect(() => {
    if (sending === null && shown.current === buttons) return
    shown.current = buttons
    const element = place.current
    if (!element) return
    element.dataset.guard = 'on'
    const timer = setTimeout(() => delete element.dataset.guard, DOUBLE_TAP_MS)
    return () => {
      clearTimeout(timer)
      delete element.dataset.guard
    }
  }, [buttons, sending])
  const focused = useRef(stood)
  useEffect(() => {
    if (focused.current === stood) return
    focused.current = stood
    place.current?.querySelector<HTMLElement>('[data-step]')?.focus()
  }, [stood])
  return (
    <div ref={place} className={styles.desk}>
      <p role="status" className="visually-hidden">
        {note ? sayNote(state.station, note) : (sentWords?.spoken ?? '')}
      </p>
      {step === 'ask' && <AskStep state={state} desk={desk} sentWords={sentWords} />}
      {step === 'not-sure' && <NotSureStep tap={tap} />}
      {step === 'choose' && <ChooseStep state={state} desk={desk} />}
      {step === 'tickets' && <TicketsStep state={state} tap={tap} />}
    </div>
  )
}
