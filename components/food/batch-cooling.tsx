import { useState } from 'react'
import { ToldWhenSteps, useToldWhen } from '#components/food/told-when.tsx'
import { ChoiceRow } from '#components/job/choice-row.tsx'
import { foodName } from '#components/job/food-title.ts'
import type { StepProps } from '#components/job/form-props.ts'
import forms from '#components/job/forms.module.css'
import { MinuteSteps } from '#components/job/minute-steps.tsx'
import { ReadingPad } from '#components/job/reading-pad.tsx'
import { ReadyNote } from '#components/job/ready-note.tsx'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useReading } from '#components/job/use-reading.ts'
import { useSettled } from '#components/ui/settled.ts'
import { coolingOf } from '#lib/rooms/food/facts/food-now.ts'
import {
  coolLimit,
  heatAgainLimit,
  heatReadingOf,
  readingOf,
} from '#lib/rooms/food/views/reading-entry.ts'
import type { ReheatingPlace } from '#lib/safety/reheating.ts'
import { limitsOf } from '#lib/service/food-limits.ts'

const HOUR_MS = 3_600_000
const MINUTE_MS = 60_000

/** A reading while it cools: the first one starts both stages, if somebody stays to read them. */
export function CoolStep({ state, acting, now, id, onDone }: StepProps) {
  const words = useFoodWords()
  const batch = state.batches[id]
  const cooling = batch ? coolingOf(state.station, batch, now) : null
  const isFirst = cooling === null
  const limits = limitsOf(state.station)
  const form = useReading(state, batch?.component ?? '', 'cooling', coolLimit(limits, cooling))
  const [hours, setHours] = useState(6)
  const when = useToldWhen(now)
  const settled = useSettled(id)
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  const act = async () => {
    const reading = readingOf(form.entry)
    if (!reading || !settled() || acting.busy) return
    const command = {
      type: 'recordCooling',
      batch: id,
      reading: { ...reading, ...(when.at === undefined ? {} : { at: when.at }) },
      initials: form.entry.initials.trim(),
      ...(isFirst ? { presentUntil: now + hours * HOUR_MS + MINUTE_MS } : {}),
    } as const
    const done = words.batches.coolDone(foodName(state, 'batch', id), words.sayDegrees(reading))
    if (await acting.act(command, done)) {
      form.remember()
      onDone()
    }
  }
  return (
    <div className={forms.two}>
      <div className={forms.what}>
        <p className={forms.care}>
          {cooling
            ? words.safety.cooling(cooling, limits, state.station.safety.scale, time)
            : words.batches.coolWhy}
        </p>
        <ToldWhenSteps
          when={when}
          label={words.batches.whenRead}
          timeZone={state.station.timeZone}
        />
        {isFirst && (
          <MinuteSteps
            label={words.batches.coolPresent}
            shown={time(now + hours * HOUR_MS)}
            steps={[-1, 1]}
            onStep={(by) => setHours(Math.max(1, Math.min(12, hours + by)))}
          />
        )}
        <div className={forms.send}>
          <ReadyNote form={form} />
          <button
            type="button"
            className={forms.main}
            disabled={acting.busy || !form.judged.isReady}
            onClick={() => void act()}
          >
            {words.forms.readSend(form.typed && words.sayDegrees(form.typed))}
          </button>
        </div>
      </div>
      <ReadingPad form={form} />
    </div>
  )
}

/** Cooled food for a hot pan: on the range, to its limit, in its time. */
export function ReheatStep({ state, acting, now, id, onDone }: StepProps) {
  const words = useFoodWords()
  const places: readonly ReheatingPlace[] = state.station.safety.reheatOn
  const [place, setPlace] = useState<ReheatingPlace>(places[0] ?? 'range')
  const started = state.batches[id]?.reheat?.startedAt ?? null
  const [ago, setAgo] = useState(started === null ? 10 : Math.round((now - started) / MINUTE_MS))
  const form = useReading(
    state,
    state.batches[id]?.component ?? '',
    'reheating',
    heatAgainLimit(state.station, place),
  )
  const settled = useSettled(id)
  const act = async () => {
    const reading = heatReadingOf(form.entry)
    if (!reading || !settled() || acting.busy) return
    const command = {
      type: 'recordReheating',
      batch: id,
      place,
      startedAt: started ?? now - ago * MINUTE_MS,
      reading,
      initials: form.entry.initials.trim(),
    } as const
    const done = words.batches.reheatDone(foodName(state, 'batch', id), words.sayDegrees(reading))
    if (await acting.act(command, done)) {
      form.remember()
      onDone()
    }
  }
  return (
    <div className={forms.two}>
      <div className={forms.what}>
        <ChoiceRow
          legend={words.batches.reheatWhere}
          options={places.map((one) => ({ id: one, label: words.batches.reheatPlace[one] }))}
          value={place}
          onChange={setPlace}
        />
        <p className={forms.note}>{words.safety.reheat['not-there']}</p>
        {started === null && (
          <MinuteSteps
            label={words.batches.reheatStarted}
            shown={words.forms.clockAgo(ago)}
            steps={[-5, -1, 1, 5]}
            onStep={(by) => setAgo(Math.max(0, Math.min(120, ago + by)))}
          />
        )}
        <div className={forms.send}>
          <ReadyNote form={form} />
          <button
            type="button"
            className={forms.main}
            disabled={acting.busy || !form.judged.isReady}
            onClick={() => void act()}
          >
            {words.forms.readSend(form.typed && words.sayDegrees(form.typed))}
          </button>
        </div>
      </div>
      <ReadingPad form={form} asksHeld />
    </div>
  )
}
