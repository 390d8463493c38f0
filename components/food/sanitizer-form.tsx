import { useState } from 'react'
import type { FormProps } from '#components/job/form-props.ts'
import forms from '#components/job/forms.module.css'
import pad from '#components/job/reading-pad.module.css'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { NumberPad } from '#components/ui/number-pad.tsx'
import { useSettled } from '#components/ui/settled.ts'
import { numberOf, tenthsOf } from '#lib/measure/number-pad.ts'
import { waterQuestion } from '#lib/rooms/food/facts/sanitizer.ts'
import { SANITIZER_LIMITS, sanitizerProblem } from '#lib/safety/sanitizer.ts'
import type { RunningState } from '#lib/service/state.ts'

const NOTHING_TYPED = { strip: '', water: '', ph: '' }

type Field = keyof typeof NOTHING_TYPED

const FIELDS: readonly Field[] = ['strip', 'water', 'ph']
const MOST_STRENGTH = 10_000
const MOST_PH = 14

type Asked = NonNullable<RunningState['station']['safety']['sanitizer']>

/** What stands on the pad, as a command carries it; null while it can't be sent. */
const solutionOf = (texts: typeof NOTHING_TYPED, scale: 'F' | 'C') => {
  const [mgPerL, tenths, ph] = [numberOf(texts.strip), tenthsOf(texts.water), numberOf(texts.ph)]
  const water = tenths === null ? null : { tenths, scale }
  const question = water && waterQuestion(water)
  const isSense = (mgPerL ?? 0) <= MOST_STRENGTH && (ph ?? 0) <= MOST_PH && !question
  return { read: mgPerL === null || !isSense ? null : { mgPerL, water, ph }, question, water, ph }
}

function ReadSanitizer({
  state,
  acting,
  onBack,
  asked,
}: FormProps<'read-here'> & { readonly asked: Asked }) {
  const words = useFoodWords()
  const said = words.readHere.sanitizer
  const { scale } = state.station.safety
  const [texts, setTexts] = useState(NOTHING_TYPED)
  const [field, setField] = useState<Field>('strip')
  const [initials, setInitials] = useState('')
  const settled = useSettled('sanitizer')
  const { read, question, water, ph } = solutionOf(texts, scale)
  const wrong = read && sanitizerProblem({ kind: asked.kind, ...read }, asked.label)
  const newest = state.sanitizer
  const unit: Readonly<Record<Field, string>> = {
    strip: said.unit,
    water: words.readings.scale(scale),
    ph: '',
  }
  const shown = (one: Field): string =>
    texts[one] === '' ? said.notRead : `${texts[one]} ${unit[one]}`
  const lacks =
    texts.strip === '' ? said.lack.strip : initials.trim() === '' ? said.lack.initials : null
  const slip = [
    ...(question && water ? [words.safety.question(question, water)] : []),
    ...((ph ?? 0) > MOST_PH ? [said.wrongPh] : []),
    ...((numberOf(texts.strip) ?? 0) > MOST_STRENGTH ? [said.wrongStrength] : []),
  ]
  const act = async () => {
    if (!read || !settled() || acting.busy) return
    const command = { type: 'readSanitizer', ...read, initials: initials.trim() } as const
    if (!(await acting.act(command, said.done(read.mgPerL, wrong)))) return
    setTexts(NOTHING_TYPED)
    setField('strip')
    // What is wrong stands here until it was made anew and read again.
    if (wrong === null) onBack()
  }
  return (
    <div className={forms.two}>
      <div className={forms.what}>
        <p>
          <b>{said.kind[asked.kind]}.</b> {said.every(asked.everyMin)}
        </p>
        <p className={newest && newest.problem !== null ? forms.warn : undefined}>
          {newest
            ? said.newest(newest, words.sayTime(newest.at, state.station.timeZone))
            : said.never}{' '}
          {newest &&
            newest.problem !== null &&
            `${said.problem[newest.problem]} ${said.wayOut(newest.problem)}`}
        </p>
        <p className={forms.large}>{said.how}</p>
        <div role="alert">
          {slip.map((sentence) => (
            <p key={sentence} className={forms.care}>
              {sentence}
            </p>
          ))}
          {wrong !== null && (
            <p className={forms.warn}>
              {said.problem[wrong]} {said.wayOut(wrong)}
            </p>
          )}
        </div>
        <div className={forms.send}>
          <p className={forms.ready} role="status">
            {lacks !== null && slip.length === 0 ? <b>{lacks} </b> : null}
            <small>{words.readings.decides}</small>
          </p>
          <button
            type="button"
            className={wrong === null ? forms.main : forms.stop}
            disabled={acting.busy || !read || lacks !== null}
            onClick={() => void act()}
          >
            {(wrong === null ? said.send : said.sendOut)(read?.mgPerL ?? null)}
          </button>
        </div>
      </div>
      <section className={pad.reading} aria-label={said.title}>
        <output
          className={pad.display}
          data-verdict={read ? (wrong === null ? 'met' : 'not-met') : 'none'}
        >
          <b>
            {texts[field] === '' ? '–' : texts[field]} {unit[field]}
          </b>
          <span>{read && words.readings.verdict[wrong === null ? 'met' : 'not-met']}</span>
        </output>
        <p className={pad.limit}>
          <small>{words.safety.paragraph(SANITIZER_LIMITS)}</small>
        </p>
        <fieldset className={pad.where}>
          <legend className="visually-hidden">{words.readings.types}</legend>
          {FIELDS.map((one) => (
            <button
              key={one}
              type="button"
              aria-pressed={field === one}
              onClick={() => setField(one)}
            >
              {said[one]}: {shown(one)}
            </button>
          ))}
        </fieldset>
        <NumberPad
          words={words.readings}
          text={texts[field]}
          decimals={1}
          onChange={(text) => setTexts((before) => ({ ...before, [field]: text }))}
          side={
            <button
              type="button"
              disabled={field === 'strip'}
              onClick={() => setTexts((before) => ({ ...before, [field]: '' }))}
            >
              {said.notRead}
            </button>
          }
        />
        <div className={pad.fields}>
          <label>
            {words.readings.initials}
            <input
              maxLength={6}
              autoCapitalize="characters"
              autoComplete="off"
              value={initials}
              onChange={(event) => setInitials(event.target.value.toUpperCase())}
            />
          </label>
        </div>
      </section>
    </div>
  )
}

/** The strength of the sanitizing solution, judged as it is typed and as it was read. */
export function SanitizerForm(props: FormProps<'read-here'>) {
  const { sanitizer } = props.state.station.safety
  return sanitizer ? <ReadSanitizer {...props} asked={sanitizer} /> : null
}
