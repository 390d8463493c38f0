import { useState } from 'react'
import { ChoiceRow } from '#components/job/choice-row.tsx'
import { foodName } from '#components/job/food-title.ts'
import type { FormProps } from '#components/job/form-props.ts'
import forms from '#components/job/forms.module.css'
import { MinuteSteps } from '#components/job/minute-steps.tsx'
import { ReadingPad } from '#components/job/reading-pad.tsx'
import { ReadyNote } from '#components/job/ready-note.tsx'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useReading } from '#components/job/use-reading.ts'
import { useSettled } from '#components/ui/settled.ts'
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
export function ClockForm({ state, acting, food, now, onBack }: FormProps<'clock'>) {
  const words = useFoodWords()
  const { what, id } = food
  const component = componentAt(state, what, id) ?? ''
  const { mayLeave, roomSince = now } = keptAs(state, food, now)
  const [from, setFrom] = useState<From | null>(null)
  const [rule, setRule] = useState<TimeRule | null>(null)
  const [ago, setAgo] = useState<number | null>(null)
  const limits = limitsOf(state.station)
  const form = useReading(
    state,
    component,
    'time-start',
    from === null ? null : clockLimit(limits, from),
  )
  const settled = useSettled(id)
  const isOut = form.judged.verdict === 'not-met'
  const readAt = now - (ago ?? 0) * MINUTE_MS
  const leftAt = from === 'room' ? Math.min(readAt, roomSince) : readAt
  const lasts = rule === '6h' ? limits.timeOnly6h : limits.timeOnly4h
  const until = words.sayTime(leftAt + lasts.withinMs, state.station.timeZone)
  const lack =
    from === null
      ? words.forms.clockLackFrom
      : rule === null
        ? words.forms.clockLackRule
        : ago === null
          ? words.forms.clockLackLeft
          : ''
  const act = async () => {
    const reading = readingOf(form.entry)
    if (!reading || from === null || rule === null || ago === null || !settled() || acting.busy)
      return
    const command = {
      type: 'startTimeClock',
      what,
      id,
      leftAt,
      from,
      rule,
      reading: { ...reading, ...(ago > 0 ? { at: readAt } : {}) },
      initials: form.entry.initials.trim(),
    } as const
    if (await acting.act(command, words.forms.clockDone(foodName(state, what, id), until))) {
      form.remember()
      onBack()
    }
  }
  if (!state.station.safety.timeProcedure)
    return <p className={forms.warn}>{words.forms.clockNoProcedure}</p>
  return (
    <div className={forms.two}>
      <div className={forms.what}>
        <ChoiceRow
          legend={words.forms.clockFrom}
          options={mayLeave.map((one) => ({ id: one, label: words.forms.clockFromIs[one] }))}
          value={from}
          onChange={(next) => {
            setFrom(next)
            setRule(RULES[next].length === 1 ? (RULES[next][0] ?? null) : null)
          }}
        />
        {from !== null && (
          <ChoiceRow
            legend={words.forms.clockRuleIs}
            options={RULES[from].map((one) => ({ id: one, label: words.forms.clockRule[one] }))}
            value={rule}
            onChange={setRule}
          />
        )}
        <MinuteSteps
          label={words.forms.clockLeft}
          shown={ago === null ? words.forms.clockNotSaid : words.forms.clockAgo(ago)}
          steps={[-10, -1, 1, 10]}
          onStep={(by) =>
            setAgo(ago === null && by < 0 ? 0 : Math.max(0, Math.min(240, (ago ?? 0) + by)))
          }
        />
        {ago === null && (
          <button type="button" className={forms.small} onClick={() => setAgo(0)}>
            {words.forms.clockJustNow}
          </button>
        )}
        <p className={forms.care}>{words.forms.clockWhy}</p>
        <div className={forms.send}>
          {lack === '' ? <ReadyNote form={form} /> : <p className={forms.ready}>{lack}</p>}
          <button
            type="button"
            className={isOut ? forms.stop : forms.main}
            disabled={acting.busy || lack !== '' || !form.judged.isReady}
            onClick={() => void act()}
          >
            {isOut
              ? words.forms.readOut(form.typed && words.sayDegrees(form.typed))
              : lack === ''
                ? words.forms.clockSend(until)
                : words.forms.clockStart}
          </button>
        </div>
      </div>
      <ReadingPad form={form} />
    </div>
  )
}
