import { type FormEvent, useState } from 'react'
import { ChoiceRow } from '#components/pans/choice-row.tsx'
import { foodName } from '#components/pans/food-title.ts'
import type { FormProps } from '#components/pans/form-props.ts'
import forms from '#components/pans/forms.module.css'
import { handedOverKind } from '#components/pans/handed-over-said.ts'
import { PassphraseField } from '#components/start/passphrase-field.tsx'
import { HANDED_OVER_ANSWERS } from '#lib/service/handed-over-event.ts'
import { handedOverListOf } from '#lib/views/handed-over-with.ts'
import { sayTime } from '#lib/words/clock-en.ts'
import { formWords } from '#lib/words/food-forms-en.ts'
import { handedOverWords as words } from '#lib/words/handed-over-en.ts'
import { readingWords } from '#lib/words/reading-pad-en.ts'
import { shelfWords } from '#lib/words/shelf-en.ts'

type Answer = (typeof HANDED_OVER_ANSWERS)[number]

/** Builds that were handed over with food which was found bad later: the person in charge answers. */
export function HandedOverForm({ state, acting, food, onBack }: FormProps<'handed-over'>) {
  const { what, id } = food
  const list = handedOverListOf(state, what, id)
  const [answer, setAnswer] = useState<Answer | null>(null)
  const [initials, setInitials] = useState('')
  const [passphrase, setPassphrase] = useState('')
  if (!list) return <p>{words.none}</p>
  const time = (at: number) => sayTime(at, state.station.timeZone)
  const lack =
    answer === null
      ? words.lackAnswer
      : initials.trim() === ''
        ? readingWords.lack.initials
        : passphrase === ''
          ? words.lackPassphrase
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
    const name = what === 'shelf' ? shelfWords.title : foodName(state, id)
    if (await acting.act(command, words.done(name), proof)) onBack()
  }
  return (
    <form className={forms.one} onSubmit={(event) => void act(event)}>
      <p className={forms.care}>
        {words.because[list.because]}{' '}
        <b>{words.howMany(time(list.since), list.builds.length, handedOverKind(what))}</b>
      </p>
      <ul className={forms.facts}>
        {list.builds.map(({ build, at }) => (
          <li key={build}>
            <b>{build}</b> {time(at)}
          </li>
        ))}
      </ul>
      <p className={forms.note}>{words.who}</p>
      <ChoiceRow
        legend={words.answers}
        options={HANDED_OVER_ANSWERS.map((one) => ({ id: one, label: words.answer[one] }))}
        value={answer}
        onChange={setAnswer}
      />
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
      <PassphraseField label={formWords.passphrase} value={passphrase} onChange={setPassphrase} />
      <div className={forms.send}>
        {lack !== null && <p className={forms.ready}>{lack}</p>}
        <button type="submit" className={forms.main} disabled={acting.busy || lack !== null}>
          {words.send}
        </button>
      </div>
    </form>
  )
}
