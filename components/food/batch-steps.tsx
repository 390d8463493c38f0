import { useState } from 'react'
import { DatesButton, DatesStep } from '#components/food/dates-button.tsx'
import type { SaidDates } from '#components/food/said-dates.ts'
import { ToldWhenSteps, useToldWhen } from '#components/food/told-when.tsx'
import { ChoiceRow } from '#components/job/choice-row.tsx'
import { foodName } from '#components/job/food-title.ts'
import type { StepProps } from '#components/job/form-props.ts'
import forms from '#components/job/forms.module.css'
import { PortionSteps } from '#components/job/portion-steps.tsx'
import { ReadingPad } from '#components/job/reading-pad.tsx'
import { ReadyNote } from '#components/job/ready-note.tsx'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useReading } from '#components/job/use-reading.ts'
import { useSettled } from '#components/ui/settled.ts'
import { isCookedHere } from '#lib/rooms/food/facts/food-now.ts'
import { cookLimit, heatReadingOf } from '#lib/rooms/food/views/reading-entry.ts'
import { amountOf } from '#lib/rooms/pans/facts/pans.ts'
import { readOfLoad } from '#lib/service/batch-loads.ts'
import { loadsRead } from '#lib/service/batch-read.ts'
import { componentOf } from '#lib/station/find.ts'

/** What it was cooked to: nothing of it is loaded without. */
export function CookStep({ state, acting, now, id, onDone }: StepProps) {
  const words = useFoodWords()
  const batch = state.batches[id]
  const component = componentOf(state.station, batch?.component ?? '')
  const limit = cookLimit(state.station, component)
  const form = useReading(state, component.id, 'cooking', limit)
  const settled = useSettled(id)
  const when = useToldWhen(now)
  const isMet = form.judged.verdict === 'met'
  const asksHeld = limit?.kind === 'heat' && limit.limit.combinations.some((one) => one.seconds > 0)
  const act = async () => {
    const reading = heatReadingOf(form.entry)
    if (!reading || !settled() || acting.busy) return
    const command = {
      type: 'recordCooking',
      batch: id,
      reading: { ...reading, ...(when.at === undefined ? {} : { at: when.at }) },
      initials: form.entry.initials.trim(),
    } as const
    const say = form.judged.verdict && !isMet ? words.batches.cookNotDone : words.batches.cookDone
    const done = say(component.name, words.sayDegrees(reading))
    if (await acting.act(command, done)) {
      form.remember()
      onDone()
    }
  }
  return (
    <div className={forms.two}>
      <div className={forms.what}>
        {batch && batch.loads > 1 && (
          <p className={forms.large}>
            {words.batches.cookWhich(
              Math.min(batch.loads, batch.loadsDone + loadsRead(state.station, batch) + 1),
              batch.loads,
            )}
          </p>
        )}
        <p>{words.batches.cookWhy}</p>
        <ToldWhenSteps
          when={when}
          label={words.batches.whenRead}
          timeZone={state.station.timeZone}
        />
        <div className={forms.send}>
          <ReadyNote form={form} />
          <button
            type="button"
            className={form.judged.verdict && !isMet ? forms.stop : forms.main}
            disabled={acting.busy || !form.judged.isReady}
            onClick={() => void act()}
          >
            {(form.judged.verdict && !isMet ? words.batches.cookSendNot : words.forms.readSend)(
              form.typed && words.sayDegrees(form.typed),
            )}
          </button>
        </div>
      </div>
      <ReadingPad form={form} asksHeld={asksHeld} />
    </div>
  )
}

/** How much it gave: from then on it can be loaded. */
export function FinishStep({ state, acting, now, id, onDone }: StepProps) {
  const words = useFoodWords()
  const batch = state.batches[id]
  const component = componentOf(state.station, batch?.component ?? '')
  const perLoad = component.remake?.portionsPerLoad ?? 24
  const of = batch?.loads ?? 1
  const next = Math.min(of, (batch?.loadsDone ?? 0) + 1)
  const soFar = Math.floor((batch?.amount ?? 0) / amountOf(state, component.id, 1))
  const gave = (done: number) => soFar + perLoad * (done - (batch?.loadsDone ?? 0))
  // Each load has a reading of its own: those that were read are finished.
  const read = batch && isCookedHere(component) ? loadsRead(state.station, batch) : of
  const isUnread =
    batch !== undefined && read === 0 && (of > 1 || readOfLoad(batch).length > 0) && !batch.cooked
  const offered = Math.max(next, Math.min(of, next - 1 + read))
  const [loads, setLoads] = useState(offered)
  const [count, setCount] = useState(gave(offered))
  const chooseLoads = (done: number) => {
    setLoads(done)
    setCount(gave(done))
  }
  const [dates, setDates] = useState<SaidDates | null>(null)
  const [isDating, setDating] = useState(false)
  const settled = useSettled(`${id} ${isDating}`)
  const when = useToldWhen(now)
  const unit = state.portions[component.id]?.unit ?? 'mg'
  const amount = amountOf(state, component.id, count)
  const act = async () => {
    if (!settled() || acting.busy) return
    const done = words.batches.finishDone(foodName(state, 'batch', id), count)
    const command = {
      type: 'finishBatch',
      batch: id,
      amount,
      loads,
      ...(when.at === undefined ? {} : { finishedAt: when.at }),
      ...(dates ? dates.told : {}),
    } as const
    if (await acting.act(command, done)) onDone()
  }
  if (isDating)
    return (
      <DatesStep
        {...{ state, now }}
        firstDay="made"
        batch={id}
        said={dates}
        none={words.dates.noneOfBatch}
        onSaid={(said) => {
          setDates(said)
          setDating(false)
        }}
      />
    )
  return (
    <div className={forms.what}>
      {of > 1 && (
        <ChoiceRow
          legend={words.batches.finishLoads}
          options={Array.from({ length: offered - next + 1 }, (_, index) => ({
            id: String(next + index),
            label: words.batches.finishLoad(next + index, of),
          }))}
          value={String(loads)}
          onChange={(id) => chooseLoads(Number(id))}
        />
      )}
      <PortionSteps
        label={of > 1 ? words.batches.finishHowSoFar : words.batches.finishHow}
        value={count}
        amount={words.amount(amount, unit)}
        least={1}
        most={500}
        onChange={setCount}
      />
      <ToldWhenSteps
        when={when}
        label={words.batches.whenFinished}
        timeZone={state.station.timeZone}
      />
      {component.held !== 'dry' && (
        <DatesButton said={dates} firstDay="made" unless="" onOpen={() => setDating(true)} />
      )}
      <div className={forms.send}>
        {isUnread && <p>{words.batches.finishUnread}</p>}
        <button
          type="button"
          className={forms.main}
          disabled={acting.busy || isUnread}
          onClick={() => void act()}
        >
          {words.batches.finishSend(count)}
        </button>
      </div>
    </div>
  )
}
