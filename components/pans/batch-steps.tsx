import { useState } from 'react'
import { foodName } from '#components/pans/food-title.ts'
import type { StepProps } from '#components/pans/form-props.ts'
import forms from '#components/pans/forms.module.css'
import { PortionSteps } from '#components/pans/portion-steps.tsx'
import { ReadingPad } from '#components/pans/reading-pad.tsx'
import { ReadyNote } from '#components/pans/ready-note.tsx'
import { useReading } from '#components/pans/use-reading.ts'
import { useSettled } from '#components/ui/settled.ts'
import { componentOf } from '#lib/menu/find.ts'
import { amountOf } from '#lib/views/pans.ts'
import { cookLimit, heatReadingOf } from '#lib/views/reading-entry.ts'
import { batchWords } from '#lib/words/batches-en.ts'
import { formWords as words } from '#lib/words/food-forms-en.ts'
import { pansWords } from '#lib/words/pans-en.ts'
import { sayDegrees } from '#lib/words/reading-en.ts'

/** What it was cooked to: nothing of it is loaded without. */
export function CookStep({ state, acting, id, onDone }: StepProps) {
  const batch = state.batches[id]
  const component = componentOf(state.station, batch?.component ?? '')
  const limit = cookLimit(state.station, component)
  const form = useReading(state, 'cooking', limit)
  const settled = useSettled(id)
  const isMet = form.judged.verdict === 'met'
  const asksHeld = limit?.kind === 'heat' && limit.limit.combinations.some((one) => one.seconds > 0)
  const act = async () => {
    const reading = heatReadingOf(form.entry)
    if (!reading || !settled() || acting.busy) return
    const command = {
      type: 'recordCooking',
      batch: id,
      reading,
      initials: form.entry.initials.trim(),
    } as const
    const done = batchWords.cookDone(component.name, sayDegrees(reading))
    if (await acting.act(command, done)) {
      form.remember()
      onDone()
    }
  }
  return (
    <div className={forms.two}>
      <div className={forms.what}>
        <p>{batchWords.cookWhy}</p>
        <div className={forms.send}>
          <ReadyNote form={form} />
          <button
            type="button"
            className={form.judged.verdict && !isMet ? forms.stop : forms.main}
            disabled={acting.busy || !form.judged.isReady}
            onClick={() => void act()}
          >
            {form.judged.verdict && !isMet ? batchWords.cookSendNot : words.readSend}
          </button>
        </div>
      </div>
      <ReadingPad form={form} asksHeld={asksHeld} />
    </div>
  )
}

/** How much it gave: from then on it can be loaded. */
export function FinishStep({ state, acting, id, onDone }: StepProps) {
  const batch = state.batches[id]
  const component = componentOf(state.station, batch?.component ?? '')
  const perLoad = component.remake?.portionsPerLoad ?? 24
  const [count, setCount] = useState(perLoad * (batch?.loads ?? 1))
  const settled = useSettled(id)
  const unit = state.portions[component.id]?.unit ?? 'mg'
  const amount = amountOf(state, component.id, count)
  const act = async () => {
    if (!settled() || acting.busy) return
    const done = batchWords.finishDone(foodName(state, id), count)
    if (await acting.act({ type: 'finishBatch', batch: id, amount }, done)) onDone()
  }
  return (
    <div className={forms.what}>
      <PortionSteps
        label={batchWords.finishHow}
        value={count}
        amount={pansWords.amount(amount, unit)}
        least={1}
        most={500}
        onChange={setCount}
      />
      <div className={forms.send}>
        <button
          type="button"
          className={forms.main}
          disabled={acting.busy}
          onClick={() => void act()}
        >
          {batchWords.finishSend(count)}
        </button>
      </div>
    </div>
  )
}
