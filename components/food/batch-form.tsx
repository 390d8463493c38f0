import { useState } from 'react'
import { CoolStep, ReheatStep } from '#components/food/batch-cooling.tsx'
import { batchFacts } from '#components/food/batch-facts.ts'
import { CookStep, FinishStep } from '#components/food/batch-steps.tsx'
import { foodName } from '#components/job/food-title.ts'
import type { FormProps } from '#components/job/form-props.ts'
import forms from '#components/job/forms.module.css'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { type BatchStep, batchSteps, nextStep } from '#lib/rooms/food/views/batch-steps.ts'

const GOES_ELSEWHERE: readonly BatchStep[] = ['clock', 'throw-out', 'resolve', 'load', 'read']

/** One batch: what is written down of it, and what comes next. */
export function BatchForm(props: FormProps<'batch'>) {
  const words = useFoodWords()
  const { state, food, now, choose } = props
  const { id } = food
  const batch = state.batches[id]
  const [chosen, setChosen] = useState<BatchStep | null>(null)
  if (!batch) return null
  const steps = batchSteps(state, id, now)
  const step = chosen !== null && steps.includes(chosen) ? chosen : nextStep(state, id)
  const open = (next: BatchStep) => {
    if (next === 'clock') choose({ kind: 'food', food: { task: 'clock', what: 'batch', id } })
    else if (next === 'throw-out')
      choose({ kind: 'food', food: { task: 'throw-out', early: { what: 'batch', id } } })
    else if (next === 'resolve')
      choose({ kind: 'food', food: { task: 'resolve', what: 'batch', id } })
    else if (next === 'read') choose({ kind: 'food', food: { task: 'read', what: 'batch', id } })
    else if (next === 'load') {
      const pan = state.station.line.wells
        .flatMap((well) => well.pans)
        .find((one) => one.component === batch.component)?.id
      const way = pan !== undefined && state.pans[pan]?.amount === 0 ? 'load' : 'change'
      if (pan !== undefined) choose({ kind: 'food', food: { task: 'put', pan, way } })
    } else setChosen(next)
  }
  const stepProps = { ...props, id, onDone: () => setChosen(null) }
  return (
    <div className={forms.one}>
      <ul className={forms.facts}>
        {batchFacts(words, state, id, batch, now).map((fact) => (
          <li key={fact}>{fact}</li>
        ))}
      </ul>
      <fieldset className={forms.steps}>
        <legend className="visually-hidden">{words.forms.batchNext}</legend>
        {steps.map((one) => (
          <button
            key={one}
            type="button"
            aria-pressed={GOES_ELSEWHERE.includes(one) ? undefined : step === one}
            onClick={() => open(one)}
          >
            {words.batches.step[one]}
          </button>
        ))}
      </fieldset>
      {step === 'cook' ? (
        <CookStep key={step} {...stepProps} />
      ) : step === 'finish' ? (
        <FinishStep key={step} {...stepProps} />
      ) : step === 'cool' ? (
        <CoolStep key={step} {...stepProps} />
      ) : step === 'reheat' ? (
        <ReheatStep key={step} {...stepProps} />
      ) : (
        <p className={forms.aside}>
          {batch.offSale
            ? words.forms.resolveWhy[batch.offSale.why]
            : words.batches.ready(foodName(state, 'batch', id))}
        </p>
      )}
    </div>
  )
}
