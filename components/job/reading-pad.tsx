import styles from '#components/job/reading-pad.module.css'
import { useFoodWords } from '#components/job/use-food-words.ts'
import type { ReadingForm } from '#components/job/use-reading.ts'
import { NumberPad } from '#components/ui/number-pad.tsx'
import { typed } from '#lib/measure/number-pad.ts'
import { writtenOf } from '#lib/rooms/food/views/reading-entry.ts'
import { SCALES } from '#lib/safety/temperature.ts'

interface ReadingPadProps {
  readonly form: ReadingForm
  /** How long it was held there matters. */
  readonly asksHeld?: boolean
  /** The initials sign a decision: they are typed anew, not offered. */
  readonly isSignature?: boolean
  /** A weight that the same pad types while it is the one chosen; null where none is asked for. */
  readonly weight?: {
    readonly text: string
    readonly isTyped: boolean
    readonly onTyped: (is: boolean) => void
    readonly onText: (text: string) => void
  } | null
}

/** Asked before it is sent, in words at the place: "Did you mean °F?" */
function Question({ form: { entry, judged, change } }: ReadingPadProps) {
  const words = useFoodWords()
  const { question, temperature } = judged
  if (!question || !temperature) return null
  return (
    <div className={styles.question} role="alert">
      <p>{words.safety.question(question, temperature)}</p>
      {question.code === 'did-you-mean' && (
        <div>
          <button type="button" onClick={() => change({ scale: question.scale })}>
            {words.readings.yesMeant(question.scale)}
          </button>
          <button
            type="button"
            onClick={() => (question.must ? change({ text: '' }) : change({ confirmed: true }))}
          >
            {question.must ? words.readings.readAgain : words.readings.noMeant(entry.scale)}
          </button>
        </div>
      )}
    </div>
  )
}

/** A temperature as it is read off a probe, with all that makes a reading count. */
export function ReadingPad({
  form,
  asksHeld = false,
  isSignature = false,
  weight = null,
}: ReadingPadProps) {
  const words = useFoodWords()
  const { entry, judged, limit, places, offers, change } = form
  const typesWeight = weight?.isTyped === true
  return (
    <section className={styles.reading} aria-label={words.readings.temperature}>
      <output className={styles.display} data-verdict={judged.verdict ?? 'none'}>
        <b>
          {entry.text === '' ? '–' : entry.text.replace('-', '−')}{' '}
          {words.readings.scale(entry.scale)}
        </b>
        <span>{judged.verdict ? words.readings.verdict[judged.verdict] : ''}</span>
      </output>
      {limit && (
        <p className={styles.limit}>
          <b>
            {words.readings.limitIs} {words.readings.limit(limit, entry.scale)}
          </b>{' '}
          <small>{words.safety.paragraph(writtenOf(limit))}</small>
        </p>
      )}
      <Question form={form} />
      {weight && (
        <fieldset className={styles.where}>
          <legend className="visually-hidden">{words.readings.types}</legend>
          {[false, true].map((is) => (
            <button
              key={String(is)}
              type="button"
              aria-pressed={weight.isTyped === is}
              onClick={() => weight.onTyped(is)}
            >
              {is ? words.readings.typesWeight : words.readings.typesTemperature}
            </button>
          ))}
        </fieldset>
      )}
      <NumberPad
        words={words.readings}
        text={typesWeight ? weight.text : entry.text}
        decimals={typesWeight ? 3 : 1}
        onChange={(text) => (typesWeight ? weight.onText(text) : change({ text }))}
        side={
          <>
            {SCALES.map((scale) => (
              <button
                key={scale}
                type="button"
                aria-pressed={entry.scale === scale}
                onClick={() => change({ scale })}
              >
                {words.readings.scale(scale)}
              </button>
            ))}
            <button
              type="button"
              aria-label={words.readings.minus}
              onClick={() => change({ text: typed(entry.text, '-') })}
            >
              −
            </button>
          </>
        }
      />
      {judged.question === null && (
        <fieldset className={styles.where}>
          <legend className="visually-hidden">{words.readings.where}</legend>
          {places.map((where) => (
            <button
              key={where}
              type="button"
              aria-pressed={entry.where === where}
              onClick={() => change({ where })}
            >
              {words.readings.whereIs[where]}
            </button>
          ))}
        </fieldset>
      )}
      <div className={styles.fields}>
        {asksHeld && (
          <label>
            {words.readings.held}
            <input
              inputMode="numeric"
              maxLength={5}
              value={entry.held}
              onChange={(event) => change({ held: event.target.value.replace(/\D/g, '') })}
            />
          </label>
        )}
        <div>
          <label>
            {words.readings.probe}
            <input
              maxLength={40}
              value={entry.probe}
              onChange={(event) => change({ probe: event.target.value })}
            />
          </label>
          {entry.probe === '' && (
            <button type="button" onClick={() => change({ probe: offers.probe })}>
              {words.readings.offered(offers.probe)}
            </button>
          )}
        </div>
        <div>
          <label>
            {words.readings.initials}
            <input
              maxLength={6}
              autoCapitalize="characters"
              autoComplete="off"
              value={entry.initials}
              onChange={(event) => change({ initials: event.target.value.toUpperCase() })}
            />
          </label>
          {entry.initials === '' && offers.initials !== '' && !isSignature && (
            <button type="button" onClick={() => change({ initials: offers.initials })}>
              {words.readings.offered(offers.initials)}
            </button>
          )}
        </div>
      </div>
    </section>
  )
}
