import { type ReactNode, Suspense, useEffect, useLayoutEffect, useRef } from 'react'
import { AskStep } from '#components/counter/ask-step.tsx'
import styles from '#components/counter/counter.module.css'
import { LaterPart } from '#components/counter/later.tsx'
import { parts } from '#components/counter/later-parts.ts'
import { sayNote } from '#components/counter/say-note.ts'
import { useSentWords } from '#components/counter/sent-banner.tsx'
import { useLaterParts } from '#components/counter/use-later-parts.ts'
import { useOrdering } from '#components/counter/use-ordering.ts'
import { CounterWordsProvider, useCounterWords } from '#components/counter/words.tsx'
import { GUARD_MS } from '#components/ui/settled.ts'
import { nextStep } from '#lib/rooms/orders/views/next-step.ts'
import type { RunningState } from '#lib/service/state.ts'

interface DeskProps {
  readonly state: RunningState
  /** What every screen has at its top: asking and choosing keep it in their band. */
  readonly top: ReactNode
}

function Desk({ state: told, top }: DeskProps) {
  const words = useCounterWords()
  useLaterParts()
  const desk = useOrdering(told)
  const { state, ordering, tap } = desk
  const { step, current, sending, sent, note } = ordering
  const sentWords = useSentWords(state, sent)
  const place = useRef<HTMLDivElement>(null)
  const stood = `${step} ${current}`
  const next = step === 'choose' ? nextStep(ordering, state) : null
  const isWay = next !== null && next.step !== 'order' && next.step !== 'send'
  const buttons = `${stood} ${isWay ? `${next.step} ${next.index}` : ''}`
  const shown = useRef(buttons)
  useLayoutEffect(() => {
    if (sending === null && shown.current === buttons) return
    shown.current = buttons
    const element = place.current
    if (!element) return
    element.dataset.guard = 'on'
    const timer = setTimeout(() => delete element.dataset.guard, GUARD_MS)
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
  const head =
    ordering.arrived.length > 0 && step !== 'turned' ? (
      <>
        <Suspense fallback={null}>
          <LaterPart of={parts.arrived} given={{ state, arrived: ordering.arrived, tap }} />
        </Suspense>
        {top}
      </>
    ) : (
      top
    )
  return (
    <div ref={place} className={styles.desk}>
      <p role="status" className="visually-hidden">
        {note ? sayNote(words, state.station, note) : (sentWords?.spoken ?? '')}
      </p>
      {step !== 'ask' && step !== 'choose' && head}
      <Suspense fallback={null}>
        <LaterPart of={parts.keptOrder} given={{ desk }} />
      </Suspense>
      <Suspense fallback={<p className={styles.noOrders}>{words.oneMoment}</p>}>
        {step === 'ask' && (
          <AskStep
            key={`${current} ${ordering.telling?.ticket}`}
            state={state}
            desk={desk}
            sentWords={sentWords}
            top={head}
          />
        )}
        {step === 'choose' && <LaterPart of={parts.choose} given={{ state, desk, top: head }} />}
        {step === 'in-charge' && <LaterPart of={parts.inCharge} given={{ state, desk }} />}
        {step === 'others' && <LaterPart of={parts.toldOthers} given={{ state, desk }} />}
        {step === 'turned' && <LaterPart of={parts.turned} given={{ state, desk }} />}
        {step === 'tickets' && <LaterPart of={parts.tickets} given={{ state, tap }} />}
        {step === 'not-sure' && <LaterPart of={parts.notSure} given={{ tap }} />}
      </Suspense>
    </div>
  )
}

/** Taking orders while a service is open: one step at a time. */
export function OrderDesk(props: DeskProps) {
  return (
    <CounterWordsProvider>
      <Desk {...props} />
    </CounterWordsProvider>
  )
}
