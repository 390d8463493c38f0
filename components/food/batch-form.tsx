import { type ReactNode, useState } from 'react'
import { CoolStep, ReheatStep } from '#components/food/batch-cooling.tsx'
import { BatchLoads } from '#components/food/batch-loads.tsx'
import { CookStep, FinishStep } from '#components/food/batch-steps.tsx'
import type { Chosen } from '#components/job/chosen.ts'
import styles from '#components/job/job.module.css'
import { JobForm } from '#components/job/job-form.tsx'
import type { StepProps, TaskProps } from '#components/job/task-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { Button } from '#components/ui/button.tsx'
import { Note } from '#components/ui/note.tsx'
import { coolBy } from '#lib/rooms/food/facts/cooling/cool-by.ts'
import { type BatchStep, batchSteps, mainStep } from '#lib/rooms/food/views/batch-steps.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import type { RunningState } from '#lib/service/state.ts'
import { linePansOf } from '#lib/station/find.ts'

/** Where a step is done that isn't a pot's own; null where it is done at the pot. */
const elsewhere = (state: RunningState, id: string, step: BatchStep): Chosen | null => {
  switch (step) {
    case 'clock':
    case 'resolve':
    case 'read':
      return { task: step, what: 'batch', id }
    case 'throw-out':
      return { task: 'throw-out', early: { what: 'batch', id } }
    case 'load': {
      const pans = linePansOf(state.station, state.batches[id]?.component ?? '')
      const pan = (pans.find((one) => state.pans[one.id]?.amount === 0) ?? pans[0])?.id
      if (pan === undefined) return null
      return { task: 'put', pan, way: state.pans[pan]?.amount === 0 ? 'load' : 'change' }
    }
    default:
      return null
  }
}

const STEPS: Partial<Record<BatchStep, (props: StepProps) => ReactNode>> = {
  cook: CookStep,
  finish: FinishStep,
  cool: CoolStep,
  reheat: ReheatStep,
}

/** One pot: what is written down of it, its loads, and what comes next as the main button. */
export function BatchForm(props: TaskProps<'batch'>) {
  const words = useFoodWords()
  const { state, acting, task, now, choose } = props
  const { id } = task
  const batch = state.batches[id]
  const [chosen, setChosen] = useState<BatchStep | null>(null)
  if (!batch) return null
  const steps = batchSteps(state, id, now)
  const main = mainStep(state, id, now)
  const step = chosen !== null && steps.includes(chosen) ? chosen : main
  const cools = coolBy(state, id, now)
  const cooled =
    cools &&
    words.batches.coolPot(cools, limitsOf(state.station), state.station.safety.scale, (at) =>
      words.sayClock(at, state.station.timeZone),
    )
  const open = (next: BatchStep) => {
    const there = elsewhere(state, id, next)
    if (there) choose(there)
    else setChosen(next)
  }
  const ways = (own: ReactNode) => (
    <>
      <BatchLoads state={state} id={id} />
      {cooled && step !== 'cool' && (
        <Note kind="watch">{step === 'finish' ? words.batches.coolNext(cooled) : cooled}</Note>
      )}
      <fieldset className={styles.others}>
        <legend className="visually-hidden">{words.forms.batchNext}</legend>
        {own}
        {steps
          // What is to be cooled is read as it cools, and in no other way.
          .filter((one) => one !== step && !(cools && step === 'cool' && one === 'read'))
          .map((one) => (
            <Button key={one} onClick={() => open(one)}>
              {words.batches.step[one]}
            </Button>
          ))}
      </fieldset>
    </>
  )
  const Step = step && STEPS[step]
  if (Step)
    return <Step key={step} {...{ state, acting, now, id, ways, onDone: () => setChosen(null) }} />
  if (step === null && state.stage === 'planned' && steps.length > 0)
    return (
      <div className={styles.job}>
        <div className={styles.what}>
          <p className={styles.large}>{words.batches.waits}</p>
          {ways(null)}
        </div>
      </div>
    )
  return (
    <JobForm
      job={{
        lack: step ? null : words.batches.none,
        busy: acting.busy,
        send: () => step && open(step),
      }}
      kind={step === 'throw-out' || step === 'resolve' ? 'no' : 'main'}
      send={step ? words.batches.step[step] : ''}
    >
      {batch.offSale ? (
        <Note kind="no">{words.forms.resolveWhy[batch.offSale.why]}</Note>
      ) : (
        <p className={styles.large}>
          {state.stage === 'planned' ? words.batches.waits : words.batches.ready}
        </p>
      )}
      {ways(null)}
    </JobForm>
  )
}
