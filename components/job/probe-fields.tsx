import { InitialsField } from '#components/job/proof-fields.tsx'
import styles from '#components/job/reading-pad.module.css'
import { useFoodWords } from '#components/job/use-food-words.ts'
import type { ReadingForm } from '#components/job/use-reading.ts'
import { Button } from '#components/ui/button.tsx'
import { Choice } from '#components/ui/choice.tsx'
import { Field } from '#components/ui/field.tsx'
import { asksStood, writtenOf } from '#lib/rooms/food/views/reading-entry.ts'

/** Asked before it is sent, in words at the place: "Did you mean °F?" */
function Question({ form: { entry, judged, change } }: { readonly form: ReadingForm }) {
  const words = useFoodWords()
  const { question, temperature } = judged
  if (!question || !temperature) return null
  return (
    <div className={styles.question} role="alert">
      <p>{words.safety.question(question, temperature)}</p>
      {question.code === 'did-you-mean' && (
        <div>
          <Button onClick={() => change({ scale: question.scale })}>
            {words.readings.yesMeant(question.scale)}
          </Button>
          <Button
            onClick={() => (question.must ? change({ text: '' }) : change({ confirmed: true }))}
          >
            {question.must ? words.readings.readAgain : words.readings.noMeant(entry.scale)}
          </Button>
        </div>
      )}
    </div>
  )
}

interface ProbeFieldsProps {
  readonly form: ReadingForm
  /** How long it was held there matters. */
  readonly asksHeld?: boolean
}

/** Where, with which probe and by whom it was read: kept over jobs; and by which limit. */
export function ProbeFields({ form, asksHeld = false }: ProbeFieldsProps) {
  const words = useFoodWords()
  const { entry, limit, places, change } = form
  if (form.judged.question) return <Question form={form} />
  return (
    <div className={styles.probe}>
      <Choice
        legend={words.readings.where}
        isBare
        ways={places.map((id) => ({ id, label: words.readings.whereIs[id] }))}
        chosen={entry.where}
        onChoose={(where) => change({ where })}
      />
      <div className={styles.fields}>
        {asksHeld && (
          <Field
            label={words.readings.held}
            inputMode="numeric"
            maxLength={5}
            value={entry.held}
            onChange={(event) => change({ held: event.target.value.replace(/\D/g, '') })}
          />
        )}
        {asksStood(limit) && (
          <Field
            label={words.readings.stood}
            inputMode="numeric"
            maxLength={5}
            value={entry.stood ?? ''}
            onChange={(event) => change({ stood: event.target.value.replace(/\D/g, '') })}
          />
        )}
        <Field
          label={words.readings.probe}
          maxLength={40}
          value={entry.probe}
          onChange={(event) => change({ probe: event.target.value })}
        />
        <InitialsField
          initials={{
            text: entry.initials,
            set: (text) => change({ initials: text.toUpperCase() }),
          }}
        />
      </div>
      {limit && (
        <p className={styles.limit}>
          <b>
            {words.readings.limitIs} {words.readings.limit(limit, entry.scale)}
          </b>{' '}
          <small>
            {words.safety.paragraph(writtenOf(limit))}. {words.readings.decides}
          </small>
        </p>
      )}
    </div>
  )
}
