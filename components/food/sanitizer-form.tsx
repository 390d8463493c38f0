import { useState } from 'react'
import styles from '#components/job/job.module.css'
import { JobForm } from '#components/job/job-form.tsx'
import { InitialsField } from '#components/job/proof-fields.tsx'
import pad from '#components/job/reading-pad.module.css'
import { PadDisplay } from '#components/job/reading-pad.tsx'
import type { TaskProps } from '#components/job/task-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useJob } from '#components/job/use-job.ts'
import { useInitials } from '#components/job/use-proof.ts'
import { Choice } from '#components/ui/choice.tsx'
import { Note } from '#components/ui/note.tsx'
import { NumberPad } from '#components/ui/number-pad.tsx'
import { numberOf, tenthsOf } from '#lib/measure/number-pad.ts'
import { waterQuestion } from '#lib/rooms/food/facts/sanitizer.ts'
import { SANITIZER_LIMITS, sanitizerProblem } from '#lib/safety/sanitizer.ts'
import type { RunningState } from '#lib/service/state.ts'

type Props = TaskProps<'read-here'>

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

function ReadSanitizer({ state, acting, onBack, asked }: Props & { readonly asked: Asked }) {
  const words = useFoodWords()
  const said = words.readHere.sanitizer
  const { scale } = state.station.safety
  const [texts, setTexts] = useState(NOTHING_TYPED)
  const [field, setField] = useState<Field>('strip')
  const initials = useInitials(false)
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
  const slip = [
    ...(question && water ? [words.safety.question(question, water)] : []),
    ...((ph ?? 0) > MOST_PH ? [said.wrongPh] : []),
    ...((numberOf(texts.strip) ?? 0) > MOST_STRENGTH ? [said.wrongStrength] : []),
  ]
  const job = useJob({
    acting,
    about: 'sanitizer',
    lacks: [
      texts.strip === '' ? said.lack.strip : slip.length > 0 ? words.readings.lackAnswer : null,
    ],
    initials,
    command: () => read && { type: 'readSanitizer', ...read, initials: initials.text.trim() },
    done: read ? said.done(read.mgPerL, wrong) : '',
    after: () => {
      setTexts(NOTHING_TYPED)
      setField('strip')
      // What is wrong stands here until it was made anew and read again.
      if (wrong === null) onBack()
    },
  })
  return (
    <JobForm
      job={job}
      kind={wrong === null ? 'main' : 'no'}
      send={(wrong === null ? said.send : said.sendOut)(read?.mgPerL ?? null)}
      side={
        <section data-pad="" className={pad.reading} aria-label={said.title}>
          <PadDisplay
            text={texts[field]}
            unit={unit[field]}
            verdict={read && (wrong === null ? 'met' : 'not-met')}
          />
          <Choice
            legend={words.readings.types}
            isBare
            ways={FIELDS.map((id) => ({ id, label: said[id], more: shown(id) }))}
            chosen={field}
            onChoose={setField}
          />
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
        </section>
      }
    >
      <p className={styles.large}>{said.how}</p>
      <p>
        <b>{said.kind[asked.kind]}.</b> {said.every(asked.everyMin)}
      </p>
      {newest ? (
        <Note kind={newest.problem === null ? 'plain' : 'no'}>
          {said.newest(newest, words.sayTime(newest.at, state.station.timeZone))}{' '}
          {newest.problem !== null &&
            `${said.problem[newest.problem]} ${said.wayOut(newest.problem)}`}
        </Note>
      ) : (
        <p>{said.never}</p>
      )}
      <div role="alert">
        {slip.map((sentence) => (
          <Note key={sentence} kind="watch">
            {sentence}
          </Note>
        ))}
        {wrong !== null && (
          <Note kind="no">
            {said.problem[wrong]} {said.wayOut(wrong)}
          </Note>
        )}
      </div>
      <InitialsField initials={initials} />
      <p className={styles.small}>
        {words.safety.paragraph(SANITIZER_LIMITS)}. {words.readings.decides}
      </p>
    </JobForm>
  )
}

/** The strength of the sanitizing solution, judged as it is typed and as it was read. */
export function SanitizerForm(props: Props) {
  const { sanitizer } = props.state.station.safety
  return sanitizer ? <ReadSanitizer {...props} asked={sanitizer} /> : null
}
