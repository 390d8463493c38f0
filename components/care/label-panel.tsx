import { useEffect, useRef, useState } from 'react'
import { LabelChoice } from '#components/care/label-choice.tsx'
import { LabelForm } from '#components/care/label-form.tsx'
import { LabelOutcomes } from '#components/care/label-outcomes.tsx'
import styles from '#components/care/label-panel.module.css'
import { LabelWays } from '#components/care/label-ways.tsx'
import { LabelWordsProvider, useLabelWords } from '#components/care/label-words.tsx'
import type { TaskProps } from '#components/job/task-props.ts'
import { Button } from '#components/ui/button.tsx'
import { labelOutcomes } from '#lib/rooms/care/views/labels.ts'

type Step = 'choice' | 'ways' | 'form' | 'outcome'

/** Each step begins at its head, for eyes and for readers of screens. */
function StepTitle({ title }: { readonly title: string }) {
  const heading = useRef<HTMLHeadingElement>(null)
  useEffect(() => {
    heading.current?.focus({ preventScroll: true })
    heading.current?.closest('section')?.scrollTo(0, 0)
  }, [])
  return (
    <h2 ref={heading} tabIndex={-1}>
      {title}
    </h2>
  )
}

function Labels({ state, acting, task }: TaskProps<'labels'>) {
  const words = useLabelWords()
  const [chosen, setChosen] = useState(task.ingredient)
  const [step, setStep] = useState<Step>(task.ingredient === null ? 'choice' : 'ways')
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
    <>
      <header className={styles.header}>
        <StepTitle key={step} title={title} />
        {step !== 'choice' && (
          <Button kind="quiet" onClick={() => setStep('choice')}>
            {words.otherFood}
          </Button>
        )}
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
    </>
  )
}

/** A label changed: which food, what happened, and what comes of it for builds and guests. */
export function LabelPanel(props: TaskProps<'labels'>) {
  return (
    <LabelWordsProvider>
      <Labels {...props} />
    </LabelWordsProvider>
  )
}
