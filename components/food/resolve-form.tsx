import { type FormEvent, useState } from 'react'
import { sayHandedOver } from '#components/care/handed-over-said.ts'
import { ChoiceRow } from '#components/job/choice-row.tsx'
import { foodName } from '#components/job/food-title.ts'
import type { FormProps } from '#components/job/form-props.ts'
import forms from '#components/job/forms.module.css'
import { MinuteSteps } from '#components/job/minute-steps.tsx'
import { ReadingPad } from '#components/job/reading-pad.tsx'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useReading } from '#components/job/use-reading.ts'
import { PassphraseField } from '#components/start/passphrase-field.tsx'
import { handedOverListOf } from '#lib/rooms/food/facts/handed-over-lists.ts'
import { batchWays, waysFor } from '#lib/rooms/food/facts/ways-out.ts'
import { heatAgainLimit, heatReadingOf } from '#lib/rooms/food/views/reading-entry.ts'
import type { WayOut } from '#lib/safety/holding.ts'
import { HOUR_MS, MINUTE_MS } from '#lib/safety/limits.ts'
import { placeOf } from '#lib/service/place.ts'

type Way = WayOut['way']

interface WaySaid {
  readonly id: Way
  readonly label: string
}

/** What is off sale: the ways that the code allows, of which the person in charge takes one. */
export function ResolveForm({ state, acting, food, now, choose, onBack }: FormProps<'resolve'>) {
  const words = useFoodWords()
  const { what, id } = food
  const placed = placeOf(state, food)
  const offSale = placed?.offSale ?? null
  const list = handedOverListOf(state, what, id)
  const place = state.station.safety.reheatOn[0] ?? 'range'
  const form = useReading(
    state,
    placed?.component ?? '',
    'reheating',
    heatAgainLimit(state.station, place),
  )
  const [passphrase, setPassphrase] = useState('')
  const [hours, setHours] = useState(6)
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  const ways: readonly WaySaid[] =
    offSale?.why === 'cooling-missed'
      ? batchWays(state, id, now).flatMap((one): WaySaid[] =>
          one === 'discard'
            ? [{ id: 'discard', label: words.safety.coolingWay.discard }]
            : one === 'reheat-and-cool-again'
              ? [{ id: 'reheat', label: words.safety.coolingWay[one] }]
              : [],
        )
      : waysFor(state, what, id, now).map((one) => ({
          id: one.way,
          label: words.safety.way(one, time),
        }))
  const [chosen, setChosen] = useState<Way | null>(null)
  const way = ways.some((one) => one.id === chosen) ? chosen : null
  const isHeated = way === 'reheat'
  const isCooledAgain = isHeated && offSale?.why === 'cooling-missed'
  const act = async (event: FormEvent) => {
    event.preventDefault()
    if (way === null || acting.busy) return
    const reading = isHeated ? heatReadingOf(form.entry) : null
    const proof = { passphrase }
    setPassphrase('')
    const command = {
      type: 'resolveOffSale',
      what,
      id,
      way,
      ...(reading ? { reading, place, initials: form.entry.initials.trim() } : {}),
      ...(isCooledAgain ? { presentUntil: now + hours * HOUR_MS + MINUTE_MS } : {}),
    } as const
    if (!(await acting.act(command, words.forms.resolved(foodName(state, what, id)), proof))) return
    if (isHeated) form.remember()
    if (list) choose({ kind: 'food', food: { task: 'handed-over', what, id } })
    else if (way === 'discard') choose({ kind: 'food', food: { task: 'throw-out', early: null } })
    else onBack()
  }
  if (!offSale) return <p>{words.forms.resolveNot}</p>
  const canRead = offSale.why === 'reading-missed'
  return (
    <form className={isHeated ? forms.two : forms.one} onSubmit={(event) => void act(event)}>
      <div className={forms.what}>
        <p className={forms.warn}>
          {words.forms.resolveWhy[offSale.why]}{' '}
          {offSale.lastGoodAt === null
            ? words.forms.resolveNoGood
            : words.forms.resolveLastGood(time(offSale.lastGoodAt))}
        </p>
        {list && (
          <p className={forms.care}>
            {sayHandedOver(words, state, list)} {words.givenOut.who}
          </p>
        )}
        {list && (
          <button
            type="button"
            className={forms.small}
            onClick={() => choose({ kind: 'food', food: { task: 'handed-over', what, id } })}
          >
            {words.givenOut.open}
          </button>
        )}
        {canRead && (
          <button
            type="button"
            className={forms.small}
            onClick={() => choose({ kind: 'food', food: { task: 'read', what, id } })}
          >
            {words.forms.behindRead}
          </button>
        )}
        <ChoiceRow
          legend={words.forms.resolveWho}
          options={ways}
          value={way}
          onChange={setChosen}
        />
        {isCooledAgain && (
          <MinuteSteps
            label={words.batches.coolPresent}
            shown={time(now + hours * HOUR_MS)}
            steps={[-1, 1]}
            onStep={(by) => setHours(Math.max(1, Math.min(12, hours + by)))}
          />
        )}
        <PassphraseField
          label={words.forms.passphrase}
          value={passphrase}
          onChange={setPassphrase}
        />
        <div className={forms.send}>
          <p className={forms.ready}>
            <small>{words.readings.decides}</small>
          </p>
          <button
            type="submit"
            className={forms.main}
            disabled={
              acting.busy || way === null || passphrase === '' || (isHeated && !form.judged.isReady)
            }
          >
            {words.forms.resolveSend}
          </button>
        </div>
      </div>
      {isHeated && <ReadingPad form={form} asksHeld isSignature />}
    </form>
  )
}
