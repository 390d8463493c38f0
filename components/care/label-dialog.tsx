import { useEffect, useRef, useState } from 'react'
import acts from '#components/care/label-acts.module.css'
import { LabelChoice } from '#components/care/label-choice.tsx'
import styles from '#components/care/label-dialog.module.css'
import { LabelForm } from '#components/care/label-form.tsx'
import { LabelOutcomes } from '#components/care/label-outcomes.tsx'
import { LabelWays } from '#components/care/label-ways.tsx'
import { LabelWordsProvider, useLabelWords } from '#components/care/label-words.tsx'
import type { Acting } from '#components/live/acting.ts'
import { Connection } from '#components/live/connection.tsx'
import { labelOutcomes } from '#lib/rooms/care/views/labels.ts'
import type { RunningState } from '#lib/service/state.ts'

interface LabelDialogProps {
  readonly state: RunningState
  readonly acting: Acting
  readonly ingredient: string | null
  readonly onBack: () => void
}

type Step = 'choice' | 'ways' | 'form' | 'outcome'

/** Each step begins at its head, for eyes and for readers of screens. */
function StepTitle({ title }: { readonly title: string }) {
  const heading = useRef<HTMLHeadingElement>(null)
  useEffect(() => {
    heading.current?.focus({ preventScroll: true })
    heading.current?.closest('dialog')?.scrollTo(0, 0)
  }, [])
  return (
    <h2 ref={heading} tabIndex={-1}>
      {title}
    </h2>
  )
}

function Labels({ state, acting, ingredient, onBack }: LabelDialogProps) {
  const words = useLabelWords()
  const dialog = useRef<HTMLDialogElement>(null)
  const [chosen, setChosen] = useState(ingredient)
  const [step, setStep] = useState<Step>(ingredient === null ? 'choice' : 'ways')
  useEffect(() => dialog.current?.showModal(), [])

  const found = state.station.ingredients.find((one) => one.id === chosen)
  const outcomes = labelOutcomes(state)
  const choose = (id: string) => {
    acting.hush()
    setChosen(id)
    setStep('ways')
  }
  const title = {
    choice: words.title,
    ways: found?.name ?? words.title,
    form: words.formTitle(found?.name ?? ''),
    outcome: words.outcomeTitle(found?.name ?? ''),
  }[step]

  return (
    <dialog ref={dialog} className={styles.dialog} aria-label={words.title} onClose={onBack}>
      <header className={styles.header}>
        <StepTitle key={step} title={title} />
        <div className={styles.link}>
          <Connection />
          <p role="status" className={styles.said} data-kind={acting.said?.kind ?? 'none'}>
            {acting.busy ? words.working : acting.said?.text}
          </p>
        </div>
        {step !== 'choice' && (
          <button type="button" className={acts.back} onClick={() => setStep('choice')}>
            {words.otherFood}
          </button>
        )}
        <button type="button" className={acts.back} onClick={() => dialog.current?.close()}>
          {words.back}
        </button>
      </header>
      {step === 'choice' || !found ? (
        <div className={styles.columns}>
          <LabelChoice state={state} onChoose={choose} />
          <section className={styles.history} aria-label={words.historyTitle}>
            <h3>{words.historyTitle}</h3>
            <LabelOutcomes state={state} outcomes={outcomes} onRead={choose} />
          </section>
        </div>
      ) : step === 'ways' ? (
        <LabelWays
          state={state}
          ingredient={found}
          acting={acting}
          onDone={() => setStep('outcome')}
          onRead={() => setStep('form')}
        />
      ) : step === 'form' ? (
        <LabelForm
          state={state}
          ingredient={found}
          acting={acting}
          onDone={() => setStep('outcome')}
        />
      ) : (
        <LabelOutcomes
          state={state}
          outcomes={outcomes.filter((one) => one.ingredient === chosen).slice(0, 1)}
          onRead={choose}
        />
      )}
    </dialog>
  )
}

/** A label changed: which food, what happened, and what comes of it for builds and guests. */
export function LabelDialog(props: LabelDialogProps) {
  return (
    <LabelWordsProvider>
      <Labels {...props} />
    </LabelWordsProvider>
  )
}
