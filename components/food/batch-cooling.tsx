import { useState } from 'react'
import { ToldWhenSteps, useToldWhen } from '#components/food/told-when.tsx'
import { foodName } from '#components/job/food-name.ts'
import styles from '#components/job/job.module.css'
import { JobForm } from '#components/job/job-form.tsx'
import { ProbeFields } from '#components/job/probe-fields.tsx'
import { ProbeScale, ReadingScale } from '#components/job/probe-scale.tsx'
import { ReadingPad } from '#components/job/reading-pad.tsx'
import { Steps } from '#components/job/steps.tsx'
import type { StepProps } from '#components/job/task-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useJob } from '#components/job/use-job.ts'
import { useReading } from '#components/job/use-reading.ts'
import { Choice } from '#components/ui/choice.tsx'
import { Note } from '#components/ui/note.tsx'
import { coolBy } from '#lib/rooms/food/facts/cooling/cool-by.ts'
import {
  coolingStay,
  coolsFrom,
  hoursToStay,
  stagesFrom,
} from '#lib/rooms/food/facts/cooling/who-stays.ts'
import { coolingOf } from '#lib/rooms/food/facts/food-now.ts'
import { coolingScaleOf, roomCoolingScaleOf } from '#lib/rooms/food/views/probe-scale.ts'
import {
  coolLimit,
  heatAgainLimit,
  heatReadingOf,
  readingOf,
} from '#lib/rooms/food/views/reading-entry.ts'
import { coolingStages } from '#lib/safety/cooling.ts'
import { HOUR_MS, MINUTE_MS } from '#lib/safety/limits.ts'
import type { ReheatingPlace } from '#lib/safety/reheating.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import { findComponent } from '#lib/station/find.ts'

/**
 * A reading while it cools: with the first one somebody stays to read what its food asks, both stages of
 * what was cooked (3-501.14(A)), the one of what comes from room temperature (3-501.14(B)).
 */
export function CoolStep({ state, acting, now, id, ways, onDone }: StepProps) {
  const words = useFoodWords()
  const batch = state.batches[id]
  const cooling = batch ? coolingOf(state.station, batch, now) : null
  const isFirst = cooling === null
  const limits = limitsOf(state.station)
  const { scale } = state.station.safety
  const cools = isFirst ? coolBy(state, id, now) : null
  const component = batch && findComponent(state.station, batch.component)
  const from = component ? coolsFrom(component) : 'cooked'
  const limit = coolLimit(limits, cooling, from)
  const form = useReading(state, batch?.component ?? '', 'cooling', limit)
  /** A claim: nobody stays until it is said. */
  const [hours, setHours] = useState<number | null>(null)
  // Who stays longer than was said is said, and never there beforehand.
  const [longer, setLonger] = useState(0)
  const stay = batch ? coolingStay(state.station, batch, now) : null
  const stayed = Math.max(now, stay?.until ?? now) + longer * HOUR_MS
  const when = useToldWhen(now)
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  // Its stages run from where it started: now, while the first reading is still being typed; of what
  // comes from room temperature since it was made.
  const readAt = when.at ?? now
  const stages =
    cooling && 'startedAt' in cooling
      ? coolingStages(from, cooling.startedAt, limits)
      : batch && component
        ? stagesFrom(state.station, component, batch, readAt)
        : []
  const last = stages.at(-1)
  const by = (stage: 1 | 2) =>
    stages.flatMap((one) => (one.stage === stage ? words.batches.coolBy(time(one.by)) : []))[0] ??
    null
  // Cold at its first reading, or too late for it: nothing is left to be read.
  const isOver = from === 'room' && (form.judged.verdict === 'met' || (last?.by ?? now) < readAt)
  const isAsked = isFirst && !isOver
  const job = useJob({
    acting,
    about: id,
    lacks: [isAsked && hours === null ? words.batches.coolPresentLack : null],
    form,
    command: () => {
      const reading = readingOf(form.entry)
      return (
        reading && {
          type: 'recordCooling',
          batch: id,
          reading: { ...reading, ...(when.at === undefined ? {} : { at: when.at }) },
          initials: form.entry.initials.trim(),
          ...(isFirst && hours !== null ? { presentUntil: now + hours * HOUR_MS + MINUTE_MS } : {}),
          ...(longer > 0 ? { presentUntil: stayed } : {}),
        }
      )
    },
    done: () => {
      const reading = readingOf(form.entry)
      return words.batches.coolDone(
        foodName(state, 'batch', id),
        reading ? words.sayDegrees(reading) : '',
      )
    },
    after: onDone,
  })
  return (
    <JobForm
      job={job}
      send={
        cools && !form.typed
          ? words.batches.coolSend(words.safety.limit(limits.coolingFrom, scale))
          : words.forms.readSend(form.typed && words.sayDegrees(form.typed))
      }
      scale={
        <ProbeScale
          drawn={
            from === 'room'
              ? roomCoolingScaleOf(limits, form.entry.scale, by(2))
              : coolingScaleOf(limits, form.entry.scale, { first: by(1), second: by(2) })
          }
          read={form.judged.question ? null : (form.judged.temperature?.tenths ?? null)}
          isMet={form.judged.verdict === 'met'}
        />
      }
      side={<ReadingPad form={form} />}
    >
      {cools && <p className={styles.large}>{words.batches.coolNow}</p>}
      <Note kind="watch">
        {cools
          ? words.batches.coolPot(cools, limits, scale, time)
          : cooling
            ? words.safety.cooling(cooling, limits, scale, time)
            : from === 'room' && last
              ? words.batches.coolWhyRoom(last, scale, time)
              : words.batches.coolWhy}
      </Note>
      {isFirst && (
        <Steps
          label={words.batches.coolPresent}
          shown={hours === null ? words.forms.clockNotSaid : time(now + hours * HOUR_MS)}
          by={[-1, 1]}
          isDead={(one) => hours !== null && (hours + one < 1 || hours + one > 12)}
          onStep={(one) => setHours(hours === null ? hoursToStay(stages, now) : hours + one)}
        />
      )}
      {stay?.isTooShort && (
        <Steps
          label={words.batches.coolPresent}
          shown={time(longer === 0 ? stay.until : stayed)}
          by={[-1, 1]}
          isDead={(one) => longer + one < 0 || longer + one > 12}
          onStep={(one) => setLonger(longer + one)}
        />
      )}
      <ProbeFields form={form} />
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

/** Cooled food for a hot pan: on the range, to its limit, in its time. */
export function ReheatStep({ state, acting, now, id, ways, onDone }: StepProps) {
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
  const { verdict } = form.judged
  const isUntimed =
    (verdict === 'not-long-enough' && form.entry.held === '') ||
    (verdict === 'not-stood' && (form.entry.stood ?? '') === '')
  const job = useJob({
    acting,
    about: id,
    lacks: [isUntimed && verdict ? words.readings.verdict[verdict] : null],
    form,
    command: () => {
      const reading = heatReadingOf(form.entry)
      return (
        reading && {
          type: 'recordReheating',
          batch: id,
          place,
          startedAt: started ?? now - ago * MINUTE_MS,
          reading,
          initials: form.entry.initials.trim(),
        }
      )
    },
    done: () => {
      const reading = heatReadingOf(form.entry)
      const say =
        form.judged.verdict === 'met' ? words.batches.reheatDone : words.batches.reheatNotDone
      return say(foodName(state, 'batch', id), reading ? words.sayDegrees(reading) : '')
    },
    after: onDone,
  })
  return (
    <JobForm
      job={job}
      send={words.forms.readSend(form.typed && words.sayDegrees(form.typed))}
      scale={<ReadingScale form={form} />}
      side={<ReadingPad form={form} />}
    >
      <Choice
        legend={words.batches.reheatWhere}
        ways={places.map((one) => ({ id: one, label: words.batches.reheatPlace[one] }))}
        chosen={place}
        onChoose={setPlace}
      />
      {started === null && (
        <Steps
          label={words.batches.reheatStarted}
          shown={words.forms.clockAgo(ago)}
          by={[-5, -1, 1, 5]}
          onStep={(by) => setAgo(Math.max(0, Math.min(120, ago + by)))}
        />
      )}
      <ProbeFields form={form} asksHeld />
      {ways(null)}
    </JobForm>
  )
}
