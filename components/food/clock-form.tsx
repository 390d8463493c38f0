import { useState } from 'react'
import { foodName } from '#components/job/food-name.ts'
import styles from '#components/job/job.module.css'
import { JobForm } from '#components/job/job-form.tsx'
import { ProbeFields } from '#components/job/probe-fields.tsx'
import { ReadingPad } from '#components/job/reading-pad.tsx'
import { Steps } from '#components/job/steps.tsx'
import type { TaskProps } from '#components/job/task-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useJob } from '#components/job/use-job.ts'
import { useReading } from '#components/job/use-reading.ts'
import { Button } from '#components/ui/button.tsx'
import { Choice } from '#components/ui/choice.tsx'
import { Note } from '#components/ui/note.tsx'
import { keptAs } from '#lib/rooms/food/facts/kept-as.ts'
import { clockLimit, readingOf } from '#lib/rooms/food/views/reading-entry.ts'
import type { TimeRule } from '#lib/safety/time-control.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import { componentAt } from '#lib/service/place.ts'

type From = 'hot' | 'cold' | 'room'

const RULES: Readonly<Record<From, readonly TimeRule[]>> = {
  hot: ['4h'],
  cold: ['4h', '6h'],
  room: ['4h-cool'],
}

const MINUTE_MS = 60_000

/** Time alone from now on: it began when the food left heat or cold, not when it is tapped. */
export function ClockForm({ state, acting, task, now, onBack }: TaskProps<'clock'>) {
  const words = useFoodWords()
  const { what, id } = task
  const { mayLeave, roomSince = now } = keptAs(state, task, now)
  const [from, setFrom] = useState<From | null>(null)
  const [rule, setRule] = useState<TimeRule | null>(null)
  const [ago, setAgo] = useState<number | null>(null)
  const limits = limitsOf(state.station)
  const form = useReading(
    state,
    componentAt(state, what, id) ?? '',
    'time-start',
    from === null ? null : clockLimit(limits, from),
  )
  const isOut = form.judged.verdict === 'not-met'
  const readAt = now - (ago ?? 0) * MINUTE_MS
  const leftAt = from === 'room' ? Math.min(readAt, roomSince) : readAt
  const lasts = rule === '6h' ? limits.timeOnly6h : limits.timeOnly4h
  const until = words.sayTime(leftAt + lasts.withinMs, state.station.timeZone)
  const job = useJob({
    acting,
    about: id,
    lacks: [
      from === null ? words.forms.clockLackFrom : null,
      rule === null ? words.forms.clockLackRule : null,
      ago === null ? words.forms.clockLackLeft : null,
    ],
    form,
    command: () => {
      const reading = readingOf(form.entry)
      if (!reading || from === null || rule === null || ago === null) return null
      return {
        type: 'startTimeClock',
        what,
        id,
        leftAt,
        from,
        rule,
        reading: { ...reading, ...(ago > 0 ? { at: readAt } : {}) },
        initials: form.entry.initials.trim(),
      }
    },
    done: words.forms.clockDone(foodName(state, what, id), until),
    after: onBack,
  })
  if (!state.station.safety.timeProcedure)
    return <Note kind="no">{words.forms.clockNoProcedure}</Note>
  return (
    <JobForm
      job={job}
      kind={isOut ? 'no' : 'main'}
      send={
        isOut
          ? words.forms.readOut(form.typed && words.sayDegrees(form.typed))
          : words.forms.clockSend(until)
      }
      side={<ReadingPad form={form} />}
    >
      <p className={styles.small}>{words.forms.clockWhy}</p>
      <Choice
        legend={words.forms.clockFrom}
        ways={mayLeave.map((one) => ({ id: one, label: words.forms.clockFromIs[one] }))}
        chosen={from}
        onChoose={(next) => {
          setFrom(next)
          setRule(RULES[next].length === 1 ? (RULES[next][0] ?? null) : null)
        }}
      />
      {from !== null && (
        <Choice
          legend={words.forms.clockRuleIs}
          ways={RULES[from].map((one) => ({ id: one, label: words.forms.clockRule[one] }))}
          chosen={rule}
          onChoose={setRule}
        />
      )}
      <div className={styles.beside}>
        <Steps
          label={words.forms.clockLeft}
          shown={ago === null ? words.forms.clockNotSaid : words.forms.clockAgo(ago)}
          by={[-10, -1, 1, 10]}
          onStep={(by) =>
            setAgo(ago === null && by < 0 ? 0 : Math.max(0, Math.min(240, (ago ?? 0) + by)))
          }
        />
        {ago === null && (
          <Button kind="quiet" onClick={() => setAgo(0)}>
            {words.forms.clockJustNow}
          </Button>
        )}
      </div>
      <ProbeFields form={form} />
    </JobForm>
  )
}
