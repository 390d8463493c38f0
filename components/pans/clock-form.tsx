import { useState } from 'react'
import { ChoiceRow } from '#components/pans/choice-row.tsx'
import { foodName } from '#components/pans/food-title.ts'
import type { FormProps } from '#components/pans/form-props.ts'
import forms from '#components/pans/forms.module.css'
import { MinuteSteps } from '#components/pans/minute-steps.tsx'
import { ReadingPad } from '#components/pans/reading-pad.tsx'
import { ReadyNote } from '#components/pans/ready-note.tsx'
import { useReading } from '#components/pans/use-reading.ts'
import { useSettled } from '#components/ui/settled.ts'
import { findComponent } from '#lib/menu/find.ts'
import type { TimeRule } from '#lib/safety/time-control.ts'
import { limitsOf } from '#lib/service/food-now.ts'
import { componentIn } from '#lib/service/held-stock.ts'
import { clockLimit, readingOf } from '#lib/views/reading-entry.ts'
import { sayTime } from '#lib/words/clock-en.ts'
import { formWords as words } from '#lib/words/food-forms-en.ts'

const FROM = ['hot', 'cold', 'room'] as const
type From = (typeof FROM)[number]

const RULES: Readonly<Record<From, readonly TimeRule[]>> = {
  hot: ['4h'],
  cold: ['4h', '6h'],
  room: ['4h-cool'],
}

const MINUTE_MS = 60_000

/** Time alone from now on: it began when the food left heat or cold, not when it is tapped. */
export function ClockForm({ state, acting, food, now, onBack }: FormProps<'clock'>) {
  const { what, id } = food
  const component = state.batches[id]?.component ?? componentIn(state.station, id) ?? ''
  const held = findComponent(state.station, component)?.held
  const [from, setFrom] = useState<From>(held === 'cold' ? 'cold' : 'hot')
  const [rule, setRule] = useState<TimeRule>('4h')
  const [ago, setAgo] = useState(0)
  const limits = limitsOf(state.station)
  const form = useReading(state, 'time-start', clockLimit(limits, from))
  const settled = useSettled(id)
  const leftAt = now - ago * MINUTE_MS
  const lasts = rule === '6h' ? limits.timeOnly6h : limits.timeOnly4h
  const until = sayTime(leftAt + lasts.withinMs, state.station.timeZone)
  const act = async () => {
    const reading = readingOf(form.entry)
    if (!reading || !settled() || acting.busy) return
    const command = {
      type: 'startTimeClock',
      what,
      id,
      leftAt,
      from,
      rule,
      reading: { ...reading, ...(ago > 0 ? { at: leftAt } : {}) },
      initials: form.entry.initials.trim(),
    } as const
    if (await acting.act(command, words.clockDone(foodName(state, id), until))) {
      form.remember()
      onBack()
    }
  }
  if (!state.station.safety.timeProcedure)
    return <p className={forms.warn}>{words.clockNoProcedure}</p>
  return (
    <div className={forms.two}>
      <div className={forms.what}>
        <ChoiceRow
          legend={words.clockFrom}
          options={FROM.map((one) => ({ id: one, label: words.clockFromIs[one] }))}
          value={from}
          onChange={(next) => {
            setFrom(next)
            setRule(RULES[next][0] ?? '4h')
          }}
        />
        <ChoiceRow
          legend={words.clockRuleIs}
          options={RULES[from].map((one) => ({ id: one, label: words.clockRule[one] }))}
          value={rule}
          onChange={setRule}
        />
        <MinuteSteps
          label={words.clockLeft}
          shown={words.clockAgo(ago)}
          steps={[-10, -1, 1, 10]}
          onStep={(by) => setAgo(Math.max(0, Math.min(240, ago + by)))}
        />
        <p className={forms.care}>{words.clockWhy}</p>
        <div className={forms.send}>
          <ReadyNote form={form} />
          <button
            type="button"
            className={forms.main}
            disabled={acting.busy || !form.judged.isReady}
            onClick={() => void act()}
          >
            {words.clockSend(until)}
          </button>
        </div>
      </div>
      <ReadingPad form={form} />
    </div>
  )
}
