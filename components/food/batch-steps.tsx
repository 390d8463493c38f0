import { useState } from 'react'
import { DatesButton, DatesStep } from '#components/food/dates-button.tsx'
import type { SaidDates } from '#components/food/said-dates.ts'
import { ToldWhenSteps, useToldWhen } from '#components/food/told-when.tsx'
import { foodName } from '#components/job/food-name.ts'
import styles from '#components/job/job.module.css'
import { JobForm } from '#components/job/job-form.tsx'
import { ProbeFields } from '#components/job/probe-fields.tsx'
import { ReadingPad } from '#components/job/reading-pad.tsx'
import { PortionSteps } from '#components/job/steps.tsx'
import type { StepProps } from '#components/job/task-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useJob } from '#components/job/use-job.ts'
import { useReading } from '#components/job/use-reading.ts'
import { Choice } from '#components/ui/choice.tsx'
import { isCookedHere } from '#lib/rooms/food/facts/food-now.ts'
import { usuallyGives } from '#lib/rooms/food/views/batch-gives.ts'
import { cookLimit, heatReadingOf, howProbed } from '#lib/rooms/food/views/reading-entry.ts'
import { amountOf } from '#lib/rooms/pans/facts/pans.ts'
import { readOfLoad } from '#lib/service/batch-loads.ts'
import { loadsRead } from '#lib/service/batch-read.ts'
import { componentOf } from '#lib/station/find.ts'

/** What it was cooked to: nothing of it is loaded without. */
export function CookStep({ state, acting, now, id, ways, onDone }: StepProps) {
  const words = useFoodWords()
  const batch = state.batches[id]
  const component = componentOf(state.station, batch?.component ?? '')
  const limit = cookLimit(state.station, component)
  const form = useReading(state, component.id, 'cooking', limit)
  const when = useToldWhen(now)
  const isNotMet = form.judged.verdict !== null && form.judged.verdict !== 'met'
  const asksHeld = limit?.kind === 'heat' && limit.limit.combinations.some((one) => one.seconds > 0)
  const job = useJob({
    acting,
    about: id,
    form,
    command: () => {
      const reading = heatReadingOf(form.entry)
      return (
        reading && {
          type: 'recordCooking',
          batch: id,
          reading: { ...reading, ...(when.at === undefined ? {} : { at: when.at }) },
          initials: form.entry.initials.trim(),
        }
      )
    },
    done: () => {
      const reading = heatReadingOf(form.entry)
      const say = isNotMet ? words.batches.cookNotDone : words.batches.cookDone
      return say(component.name, reading ? words.sayDegrees(reading) : '')
    },
    after: onDone,
  })
  return (
    <JobForm
      job={job}
      kind={isNotMet ? 'no' : 'main'}
      send={(isNotMet ? words.batches.cookSendNot : words.forms.readSend)(
        form.typed && words.sayDegrees(form.typed),
      )}
      side={<ReadingPad form={form} />}
    >
      {batch && batch.loads > 1 && (
        <p className={styles.large}>
          {words.batches.cookWhich(
            Math.min(batch.loads, batch.loadsDone + loadsRead(state.station, batch) + 1),
            batch.loads,
          )}
        </p>
      )}
      <p>
        {words.round.how[howProbed(component, 'cooking')]} {words.batches.cookWhy}
      </p>
      <ProbeFields form={form} asksHeld={asksHeld} />
      {ways(
        <ToldWhenSteps
          when={when}
          label={words.batches.whenRead}
          timeZone={state.station.timeZone}
        />,
      )}
    </JobForm>
  )
}

/** How much it gave: from then on it can be loaded. */
export function FinishStep({ state, acting, now, id, ways, onDone }: StepProps) {
  const words = useFoodWords()
  const batch = state.batches[id]
  const component = componentOf(state.station, batch?.component ?? '')
  const of = batch?.loads ?? 1
  const perLoad = usuallyGives(state, component.id, of)
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
  const [isMeasured, setMeasured] = useState(false)
  const when = useToldWhen(now)
  const unit = state.portions[component.id]?.unit ?? 'mg'
  const amount = amountOf(state, component.id, count)
  const job = useJob({
    acting,
    about: `${id} ${isDating}`,
    lacks: [isUnread ? words.batches.finishUnread : null],
    command: () => ({
      type: 'finishBatch',
      batch: id,
      amount,
      loads,
      ...(isMeasured ? { measured: true as const } : {}),
      ...(when.at === undefined ? {} : { finishedAt: when.at }),
      ...(dates ? dates.told : {}),
    }),
    done: words.batches.finishDone(foodName(state, 'batch', id), count),
    after: onDone,
  })
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
    <JobForm
      job={job}
      send={words.batches.finishSend(count)}
      side={
        <div className={styles.what}>
          <ToldWhenSteps
            when={when}
            label={words.batches.whenFinished}
            timeZone={state.station.timeZone}
          />
          {component.held !== 'dry' && (
            <DatesButton said={dates} firstDay="made" unless="" onOpen={() => setDating(true)} />
          )}
        </div>
      }
    >
      {of > 1 && (
        <Choice
          legend={words.batches.finishLoads}
          ways={Array.from({ length: offered - next + 1 }, (_, index) => ({
            id: String(next + index),
            label: words.batches.finishLoad(next + index, of),
          }))}
          chosen={String(loads)}
          onChoose={(one) => chooseLoads(Number(one))}
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
      <label className={styles.check}>
        <input
          type="checkbox"
          checked={isMeasured}
          onChange={({ target }) => setMeasured(target.checked)}
        />
        {words.batches.wasMeasured}
      </label>
      {ways(null)}
    </JobForm>
  )
}
