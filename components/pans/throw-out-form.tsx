import { useState } from 'react'
import { ChoiceRow } from '#components/pans/choice-row.tsx'
import { foodName } from '#components/pans/food-title.ts'
import type { FormProps } from '#components/pans/form-props.ts'
import forms from '#components/pans/forms.module.css'
import { useSettled } from '#components/ui/settled.ts'
import { DISCARD_REASONS, type DiscardReason } from '#lib/service/food-event.ts'
import type { ToThrowOut } from '#lib/service/food-state.ts'
import { sayTime } from '#lib/words/clock-en.ts'
import { formWords as words } from '#lib/words/food-forms-en.ts'
import { readingWords } from '#lib/words/reading-pad-en.ts'

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
  const [initials, setInitials] = useState('')
  const [reason, setReason] = useState<DiscardReason | null>(null)
  const list = Object.values(state.toThrowOut)
  const settled = useSettled(list.length)
  const { early } = food
  const sign = async (what: ToThrowOut['what'], id: string, why: DiscardReason) => {
    if (!settled() || acting.busy) return
    const command = { type: 'throwOut', what, id, reason: why, initials: initials.trim() } as const
    if (!(await acting.act(command, words.throwDone(foodName(state, id))))) return
    // Each throwing out is signed anew: nobody signs as the person before.
    setInitials('')
    if (early || list.length <= 1) onBack()
  }
  const isReady = initials.trim() !== '' && !acting.busy
  const field = (
    <label className={forms.field}>
      {readingWords.initials}
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
          legend={words.reason}
          options={DISCARD_REASONS.map((id) => ({ id, label: words.discardReason[id] }))}
          value={reason}
          onChange={setReason}
        />
        {field}
        <div className={forms.send}>
          {(reason === null || initials.trim() === '') && (
            <p className={forms.ready}>
              {reason === null ? words.wasteLack : readingWords.lack.initials}
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
            {words.throwSend}
          </button>
        </div>
      </div>
    )
  return (
    <div className={forms.one}>
      <p>{list.length === 0 ? words.throwNone : words.throwWhy}</p>
      {list.length > 0 && field}
      {list.length > 0 && initials.trim() === '' && (
        <p className={forms.ready}>{readingWords.lack.initials}</p>
      )}
      <ul className={forms.list}>
        {list.map(({ what, id, because, since }) => (
          <li key={`${what} ${id}`}>
            <div>
              <b>{foodName(state, id)}</b> {words.throwWhat[what]}
              <p>
                {words.throwBecause[because]},{' '}
                {words.throwSince(sayTime(since, state.station.timeZone))}
              </p>
            </div>
            <button
              type="button"
              data-kind="main"
              disabled={!isReady}
              onClick={() => void sign(what, id, reasonOf[because])}
            >
              {words.throwSend}
            </button>
          </li>
        ))}
      </ul>
    </div>
  )
}
