import { useState } from 'react'
import { ChoiceRow } from '#components/job/choice-row.tsx'
import { foodName } from '#components/job/food-title.ts'
import type { FormProps } from '#components/job/form-props.ts'
import forms from '#components/job/forms.module.css'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useSettled } from '#components/ui/settled.ts'
import { DISCARD_REASONS, type DiscardReason } from '#lib/service/events/food-event.ts'
import type { ToThrowOut } from '#lib/service/food-state.ts'

const reasonOf: Readonly<Record<ToThrowOut['because'], DiscardReason>> = {
  time: 'past-time',
  date: 'past-date',
  'too-warm': 'out-of-limits',
  'out-of-limits': 'out-of-limits',
  'taken-away': 'left-over',
  'counted-empty': 'left-over',
}

/** What has to be thrown out stays here until it is initialed; or one thing that goes early. */
export function ThrowOutForm({ state, acting, food, onBack }: FormProps<'throw-out'>) {
  const words = useFoodWords()
  const [initials, setInitials] = useState('')
  const [reason, setReason] = useState<DiscardReason | null>(null)
  const list = Object.values(state.toThrowOut)
  const settled = useSettled(list.length)
  const { early } = food
  const sign = async (what: ToThrowOut['what'], id: string, why: DiscardReason) => {
    if (!settled() || acting.busy) return
    const command = { type: 'throwOut', what, id, reason: why, initials: initials.trim() } as const
    if (!(await acting.act(command, words.forms.throwDone(foodName(state, what, id))))) return
    // Each throwing out is signed anew: nobody signs as the person before.
    setInitials('')
    if (early || list.length <= 1) onBack()
  }
  const isReady = initials.trim() !== '' && !acting.busy
  const field = (
    <label className={forms.field}>
      {words.readings.initials}
      <input
        maxLength={6}
        autoCapitalize="characters"
        autoComplete="off"
        value={initials}
        onChange={(event) => setInitials(event.target.value.toUpperCase())}
      />
    </label>
  )
  if (early)
    return (
      <div className={forms.one}>
        <ChoiceRow
          legend={words.forms.reason}
          options={DISCARD_REASONS.map((id) => ({ id, label: words.forms.discardReason[id] }))}
          value={reason}
          onChange={setReason}
        />
        {field}
        <div className={forms.send}>
          {(reason === null || initials.trim() === '') && (
            <p className={forms.ready}>
              {reason === null ? words.forms.wasteLack : words.readings.lack.initials}
            </p>
          )}
          <button
            type="button"
            className={forms.stop}
            disabled={!isReady || reason === null}
            onClick={() => {
              if (reason !== null) void sign(early.what, early.id, reason)
            }}
          >
            {words.forms.throwSend}
          </button>
        </div>
      </div>
    )
  return (
    <div className={forms.one}>
      <p>{list.length === 0 ? words.forms.throwNone : words.forms.throwWhy}</p>
      {list.length > 0 && field}
      {list.length > 0 && initials.trim() === '' && (
        <p className={forms.ready}>{words.readings.lack.initials}</p>
      )}
      <ul className={forms.list}>
        {list.map(({ what, id, because, since }) => (
          <li key={`${what} ${id}`}>
            <div>
              <b>{foodName(state, what, id)}</b> {words.forms.throwWhat[what]}
              <p>
                {words.forms.throwBecause[because]},{' '}
                {words.forms.throwSince(words.sayTime(since, state.station.timeZone))}
              </p>
            </div>
            <button
              type="button"
              data-kind="main"
              disabled={!isReady}
              onClick={() => void sign(what, id, reasonOf[because])}
            >
              {words.forms.throwSend}
            </button>
          </li>
        ))}
      </ul>
    </div>
  )
}
