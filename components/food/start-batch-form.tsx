import { useState } from 'react'
import { ToldWhenSteps, useToldWhen } from '#components/food/told-when.tsx'
import { ChoiceRow } from '#components/job/choice-row.tsx'
import type { FormProps } from '#components/job/form-props.ts'
import forms from '#components/job/forms.module.css'
import { MinuteSteps } from '#components/job/minute-steps.tsx'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useForecast } from '#components/live/forecast.ts'
import { useSettled } from '#components/ui/settled.ts'
import { expectedAt } from '#lib/rooms/food/views/batch-strip.ts'
import { outlookOf } from '#lib/rooms/pans/facts/pan-outlook.ts'
import { findComponent } from '#lib/station/find.ts'

/** A batch of something that can be made today: how many loads, and when it would stand ready. */
export function StartBatchForm({
  state,
  acting,
  food,
  now,
  choose,
  onBack,
}: FormProps<'start-batch'>) {
  const words = useFoodWords()
  const forecast = useForecast()
  const can = state.station.components.filter((one) => one.remake !== null)
  const asked = food.component
  const others = state.station.components.filter((one) => one.remake === null && one.id === asked)
  const list = [...can, ...others]
  const [chosen, setChosen] = useState<string | null>(asked ?? can[0]?.id ?? null)
  const component = findComponent(state.station, chosen ?? '')
  const planned = forecast?.components[chosen ?? '']?.batch?.loads ?? 0
  const [count, setCount] = useState(Math.max(1, planned))
  const settled = useSettled(chosen)
  const when = useToldWhen(now)
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  if (list.length === 0 || !component) return <p className={forms.warn}>{words.forms.startNone}</p>
  const { remake } = component
  const loads = Math.min(count, remake?.mostLoads ?? 20)
  const readyAt = expectedAt(state, {
    component: component.id,
    loads,
    startedAt: when.at ?? now,
  })
  const act = async () => {
    if (!settled() || acting.busy) return
    const done = words.forms.startDone(component.name, loads)
    const command = {
      type: 'startBatch',
      component: component.id,
      loads,
      ...(when.at === undefined ? {} : { startedAt: when.at }),
    } as const
    if (await acting.act(command, done)) onBack()
  }
  return (
    <div className={forms.one}>
      <ChoiceRow
        legend={words.forms.startOf}
        options={list.map(({ id, name, remake: how }) => {
          const lasting = outlookOf(forecast, id)?.lasting
          return {
            id,
            label: name,
            more: [
              ...(lasting ? [words.advice.lastingWord[lasting]] : []),
              ...(how ? [words.forms.startCan(how.minutes, how.where, how.by)] : []),
            ].join(' · '),
          }
        })}
        value={component.id}
        onChange={setChosen}
      />
      <MinuteSteps
        label={words.forms.startLoads}
        shown={words.batches.loads(loads)}
        steps={[-1, 1]}
        onStep={(by) => setCount(Math.max(1, Math.min(remake?.mostLoads ?? 20, loads + by)))}
      />
      <ToldWhenSteps
        when={when}
        label={words.batches.whenStarted}
        timeZone={state.station.timeZone}
      />
      {remake && readyAt !== null && (
        <p>{words.forms.startMakes(loads * remake.portionsPerLoad, time(readyAt))}</p>
      )}
      <div className={forms.send}>
        <button
          type="button"
          className={forms.small}
          onClick={() => choose({ kind: 'food', food: { task: 'behind' } })}
        >
          {words.forms.behindTitle}
        </button>
        <button
          type="button"
          className={forms.main}
          disabled={acting.busy}
          onClick={() => void act()}
        >
          {words.forms.startSend(loads)}
        </button>
      </div>
    </div>
  )
}
