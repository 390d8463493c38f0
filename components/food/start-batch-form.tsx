import { useState } from 'react'
import { ToldWhenSteps, useToldWhen } from '#components/food/told-when.tsx'
import { usePlannedLater } from '#components/food/use-planned-later.ts'
import { ChoiceRow } from '#components/job/choice-row.tsx'
import styles from '#components/job/job.module.css'
import { JobForm } from '#components/job/job-form.tsx'
import { Steps } from '#components/job/steps.tsx'
import type { TaskProps } from '#components/job/task-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useJob } from '#components/job/use-job.ts'
import { useForecast } from '#components/live/forecast.ts'
import { Button } from '#components/ui/button.tsx'
import { Note } from '#components/ui/note.tsx'
import { expectedAt } from '#lib/rooms/food/views/batch-strip.ts'
import { canStart, firstToStart, isEmpty, loadsPlanned } from '#lib/rooms/food/views/start-batch.ts'
import { outlookOf } from '#lib/rooms/pans/facts/pan-outlook.ts'
import { findComponent } from '#lib/station/find.ts'

/** A batch of something that can be made today: how many loads, and when it would stand ready. */
export function StartBatchForm({ state, acting, task, now, onBack }: TaskProps<'start-batch'>) {
  const words = useFoodWords()
  const forecast = useForecast()
  const can = canStart(state)
  const asked = task.component
  const others = state.station.components.filter((one) => !can.includes(one) && one.id === asked)
  const list = [...can, ...others]
  const [chosen, setChosen] = useState<string | null>(
    () => asked ?? firstToStart(state) ?? can[0]?.id ?? null,
  )
  const component = findComponent(state.station, chosen ?? '')
  const isAhead = state.stage === 'planned'
  const usual = (of: string): number =>
    Math.max(1, (isAhead ? loadsPlanned(state, of) : forecast?.components[of]?.batch?.loads) ?? 0)
  const [count, setCount] = useState(() => usual(chosen ?? ''))
  const when = useToldWhen(now)
  const remake = component?.remake ?? null
  const most = remake?.mostLoads ?? 20
  const loads = Math.min(count, most)
  const later = usePlannedLater(state, component?.id ?? '', when.at ?? now)
  /** Of which food somebody said that it is started before its planned day. */
  const [early, setEarly] = useState<string | null>(null)
  const { timeZone } = state.station
  const asks = later !== null && early !== chosen
  const job = useJob({
    acting,
    about: `${chosen} ${early}`,
    lacks: [
      asks
        ? words.forms.plannedFor(words.sayDay(later, timeZone), words.sayTime(later, timeZone))
        : null,
    ],
    command: () =>
      component
        ? {
            type: 'startBatch',
            component: component.id,
            loads,
            ...(when.at === undefined ? {} : { startedAt: when.at }),
          }
        : null,
    done: words.forms.startDone(component?.name ?? '', loads),
    after: onBack,
  })
  if (list.length === 0 || !component) return <Note kind="no">{words.forms.startNone}</Note>
  const readyAt = expectedAt(state, {
    component: component.id,
    loads,
    startedAt: when.at ?? now,
  })
  return (
    <JobForm
      job={job}
      send={words.forms.startSend(loads)}
      side={
        <div className={styles.what}>
          <Steps
            label={words.forms.startLoads}
            shown={words.batches.loads(loads)}
            by={[-1, 1]}
            isDead={(by) => loads + by < 1 || loads + by > most}
            onStep={(by) => setCount(loads + by)}
          />
          {remake && readyAt !== null && (
            <p className={styles.large}>
              {(isAhead ? words.forms.startMakesAhead : words.forms.startMakes)(
                loads * remake.portionsPerLoad,
                words.sayTime(readyAt, state.station.timeZone),
              )}
            </p>
          )}
          {asks ? (
            <Button onClick={() => setEarly(chosen)}>{words.forms.startEarly}</Button>
          ) : (
            <ToldWhenSteps
              when={when}
              label={words.batches.whenStarted}
              timeZone={state.station.timeZone}
            />
          )}
        </div>
      }
    >
      <ChoiceRow
        legend={words.forms.startOf}
        options={list.map(({ id, name, remake: how }) => {
          if (isAhead)
            return { id, label: name, more: words.forms.startPlanned(loadsPlanned(state, id)) }
          const lasting = outlookOf(forecast, id)?.lasting
          return {
            id,
            label: name,
            more: [
              ...(isEmpty(state, id)
                ? [words.setUp.none]
                : lasting
                  ? [words.advice.lastingWord[lasting]]
                  : []),
              ...(how ? [words.forms.startCan(how.minutes, how.where, how.by)] : []),
            ].join(' · '),
          }
        })}
        value={component.id}
        onChange={(id) => {
          setChosen(id)
          if (isAhead) setCount(usual(id))
        }}
      />
    </JobForm>
  )
}
