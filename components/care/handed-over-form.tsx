import { type FormEvent, useState } from 'react'
import { handedOverKind } from '#components/care/handed-over-said.ts'
import { ChoiceRow } from '#components/job/choice-row.tsx'
import { foodName } from '#components/job/food-title.ts'
import type { FormProps } from '#components/job/form-props.ts'
import forms from '#components/job/forms.module.css'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { PassphraseField } from '#components/start/passphrase-field.tsx'
import { handedOverListOf } from '#lib/rooms/food/facts/handed-over-lists.ts'
import { HANDED_OVER_ANSWERS } from '#lib/service/events/handed-over-event.ts'
import { sayBuild } from '#lib/service/tickets.ts'

type Answer = (typeof HANDED_OVER_ANSWERS)[number]

/** Builds that were handed over with food which was found bad later: the person in charge answers. */
export function HandedOverForm({ state, acting, food, onBack }: FormProps<'handed-over'>) {
  const words = useFoodWords()
  const { what, id } = food
  const list = handedOverListOf(state, what, id)
  const [answer, setAnswer] = useState<Answer | null>(null)
  const [initials, setInitials] = useState('')
  const [passphrase, setPassphrase] = useState('')
  if (!list) return <p>{words.givenOut.none}</p>
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  const lack =
    answer === null
      ? words.givenOut.lackAnswer
      : initials.trim() === ''
        ? words.readings.lack.initials
        : passphrase === ''
          ? words.givenOut.lackPassphrase
          : null
  const act = async (event: FormEvent) => {
    event.preventDefault()
    if (answer === null || lack !== null || acting.busy) return
    const proof = { passphrase }
    setPassphrase('')
    const command = {
      type: 'answerHandedOver',
      what,
      id,
      answer,
      seen: list.builds.length,
      initials: initials.trim(),
    } as const
    const name = what === 'shelf' ? words.readHere.shelf.title : foodName(state, what, id)
    if (await acting.act(command, words.givenOut.done(name), proof)) onBack()
  }
  return (
    <form className={forms.one} onSubmit={(event) => void act(event)}>
      <p className={forms.care}>
        {words.givenOut.because[list.because]}{' '}
        <b>{words.givenOut.howMany(time(list.since), list.builds.length, handedOverKind(what))}</b>
      </p>
      <ul className={forms.facts}>
        {list.builds.map(({ build, at }) => (
          <li key={build}>
            <b>{sayBuild(build)}</b> {time(at)}
          </li>
        ))}
      </ul>
      <p className={forms.note}>{words.givenOut.who}</p>
      <ChoiceRow
        legend={words.givenOut.answers}
        options={HANDED_OVER_ANSWERS.map((one) => ({ id: one, label: words.givenOut.answer[one] }))}
        value={answer}
        onChange={setAnswer}
      />
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
      <PassphraseField label={words.forms.passphrase} value={passphrase} onChange={setPassphrase} />
      <div className={forms.send}>
        {lack !== null && <p className={forms.ready}>{lack}</p>}
        <button type="submit" className={forms.main} disabled={acting.busy || lack !== null}>
          {words.givenOut.send}
        </button>
      </div>
    </form>
  )
}
