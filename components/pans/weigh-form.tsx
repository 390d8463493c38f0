import { useState } from 'react'
import { foodName } from '#components/job/food-name.ts'
import styles from '#components/job/job.module.css'
import { JobForm } from '#components/job/job-form.tsx'
import pad from '#components/job/reading-pad.module.css'
import { PadDisplay } from '#components/job/reading-pad.tsx'
import type { TaskProps } from '#components/job/task-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useJob } from '#components/job/use-job.ts'
import { Note } from '#components/ui/note.tsx'
import { NumberPad } from '#components/ui/number-pad.tsx'
import { tareOf } from '#lib/rooms/pans/facts/capacity.ts'
import { SCALE_UNITS, type ScaleUnit, weightMg } from '#lib/rooms/pans/views/weight-entry.ts'
import { componentIn } from '#lib/service/held-stock.ts'

/** What a pan weighs with its food: the empty pan is taken off, and what is left is believed. */
export function WeighForm({ state, acting, task, onBack }: TaskProps<'weigh'>) {
  const words = useFoodWords()
  const [text, setText] = useState('')
  const [unit, setUnit] = useState<ScaleUnit>('lb')
  const tareMg = tareOf(state, task.pan)
  const grossMg = weightMg(text, unit)
  const name = (id: string) => foodName(state, 'pan', id)
  const weight = (mg: number) => words.amount(mg, 'mg')
  const isBelow = tareMg !== null && grossMg !== null && grossMg < tareMg
  const netMg = tareMg === null || grossMg === null || isBelow ? null : grossMg - tareMg
  const each = state.portions[componentIn(state.station, task.pan) ?? '']?.amount ?? 1
  const job = useJob({
    acting,
    about: task.pan,
    lacks: [
      tareMg === null
        ? words.forms.noTare
        : isBelow
          ? words.forms.weighLess
          : netMg === null
            ? words.forms.weighLack
            : null,
    ],
    command: () =>
      grossMg === null ? null : { type: 'correct', pan: task.pan, weighedMg: grossMg },
    done: words.forms.weighed(name(task.pan)),
    after: onBack,
  })
  return (
    <JobForm
      job={job}
      send={words.forms.weighSend}
      side={
        <section data-pad="" className={pad.reading} aria-label={words.forms.byWeight}>
          <PadDisplay text={text} unit={words.forms.unit[unit]} />
          <NumberPad
            words={words.readings}
            text={text}
            decimals={3}
            onChange={setText}
            side={SCALE_UNITS.map((one) => (
              <button
                key={one}
                type="button"
                aria-pressed={unit === one}
                onClick={() => setUnit(one)}
              >
                {words.forms.unit[one]}
              </button>
            ))}
          />
        </section>
      }
    >
      <p className={styles.large}>{words.forms.weighHow}</p>
      {tareMg !== null && <p>{words.forms.tare(weight(tareMg))}</p>}
      {isBelow && (
        <Note kind="no" role="alert">
          {words.panRules.amount({ code: 'below-tare', tareMg }, 'mg', { weight, name })}
        </Note>
      )}
      {netMg !== null && (
        <Note kind="watch">{words.forms.net(weight(netMg), Math.round(netMg / each))}</Note>
      )}
    </JobForm>
  )
}
