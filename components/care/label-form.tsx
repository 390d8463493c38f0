import { type FormEvent, useState } from 'react'
import { LabelAllergen } from '#components/care/label-allergen.tsx'
import answers from '#components/care/label-answers.module.css'
import { LabelClaims } from '#components/care/label-claims.tsx'
import styles from '#components/care/label-form.module.css'
import { LabelGluten } from '#components/care/label-gluten.tsx'
import { LabelGrounds } from '#components/care/label-grounds.tsx'
import { LabelMaking } from '#components/care/label-making.tsx'
import { LabelProduct } from '#components/care/label-product.tsx'
import { useLabelWords } from '#components/care/label-words.tsx'
import type { Acting } from '#components/live/acting.ts'
import { useServerTime } from '#components/live/server-time.ts'
import { PassphraseField } from '#components/start/passphrase-field.tsx'
import { Button } from '#components/ui/button.tsx'
import { Field } from '#components/ui/field.tsx'
import { civilDate } from '#lib/measure/civil.ts'
import {
  contradictions,
  draftOf,
  EMPTY_LABEL,
  labelLines,
  problemOf,
  unansweredSources,
  unsaid,
} from '#lib/rooms/care/views/label-draft.ts'
import {
  groundedLabel,
  groundsProblems,
  NO_GROUNDS,
  restNotListed,
  withRestNotListed,
} from '#lib/rooms/care/views/label-grounds.ts'
import { isNotSame, type Product } from '#lib/rooms/care/views/labels.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { Ingredient } from '#lib/station/station-document.ts'

interface LabelFormProps {
  readonly state: RunningState
  readonly ingredient: Ingredient
  readonly acting: Acting
  readonly onDone: () => void
}

/** What a label says, read by the person in charge. It starts with nothing said. */
export function LabelForm({ state, ingredient, acting, onDone }: LabelFormProps) {
  const words = useLabelWords()
  const { station } = state
  const [draft, setDraft] = useState(EMPTY_LABEL)
  const [grounds, setGrounds] = useState(NO_GROUNDS)
  const [product, setProduct] = useState<Product>('other')
  const [passphrase, setPassphrase] = useState('')
  const today = civilDate(useServerTime(), station.timeZone)
  const problem = problemOf(station, draft)
  const wrong = [
    ...contradictions(station, draft).map(words.contradiction),
    ...(problem === null ? [] : [words.sayLabelProblem(problem)]),
    ...unansweredSources(draft).map(words.sourceUnanswered),
    ...groundsProblems(station, draft, grounds).map(words.groundsProblem),
  ]
  const missing = [
    ...(draft.readBy.trim() === '' ? [words.missingReadBy] : []),
    ...(passphrase === '' ? [words.missingPassphrase] : []),
  ]
  const rest = restNotListed(station, draft, grounds).length
  const isRead = ingredient.readOn !== null
  const answer = isNotSame(state, ingredient.id) ? 'other' : product

  const keep = async (event: FormEvent) => {
    event.preventDefault()
    if (acting.busy || wrong.length > 0 || missing.length > 0) return
    const label = groundedLabel(station, draft, grounds, today)
    const { id } = ingredient
    const initials = draft.readBy.trim()
    const command = {
      type: 'changeLabel',
      ingredient: id,
      product: answer,
      label,
      initials,
    } as const
    const done = words.done.read(ingredient.name)
    setPassphrase('')
    if (await acting.act(command, done, { passphrase })) onDone()
  }

  return (
    <form className={styles.form} onSubmit={(event) => void keep(event)}>
      <div className={styles.lead}>
        <p>{words.formWhy}</p>
        {isRead && (
          <Button
            onClick={() => {
              setDraft({ ...draftOf(station, ingredient), readBy: draft.readBy })
              // That all was read, and what declares it free, is said anew of the pack in hand.
              setGrounds({ ...NO_GROUNDS, law: ingredient.law ?? null })
            }}
          >
            {words.fromBefore}
          </Button>
        )}
      </div>
      <LabelProduct
        state={state}
        ingredient={ingredient.id}
        product={answer}
        onChange={setProduct}
      />
      <h3>{words.allergens}</h3>
      <LabelGrounds draft={draft} grounds={grounds} onChange={setGrounds} />
      {grounds.law !== null && (
        <Button
          disabled={rest === 0}
          onClick={() => {
            setDraft(withRestNotListed(station, draft, grounds))
            setGrounds({ ...grounds, hasReadAll: true })
          }}
        >
          {words.restNotListed(rest)}
        </Button>
      )}
      <div className={answers.allergens}>
        {labelLines(station).map((line) => (
          <LabelAllergen key={line.code} line={line} draft={draft} onChange={setDraft} />
        ))}
      </div>
      <LabelGluten draft={draft} onChange={setDraft} />
      <LabelMaking station={station} draft={draft} onChange={setDraft} />
      <LabelClaims draft={draft} onChange={setDraft} />
      <div className={styles.end}>
        <Field
          label={words.readBy}
          maxLength={6}
          value={draft.readBy}
          onChange={(event) => setDraft({ ...draft, readBy: event.target.value })}
        />
        <PassphraseField label={words.passphrase} value={passphrase} onChange={setPassphrase} />
        <div className={styles.problems}>
          <p>{words.unsaid(unsaid(station, draft))}</p>
          {draft.traits === null && <p>{words.traitsUnsaid}</p>}
          <div role="status">
            {wrong.map((one) => (
              <p key={one} data-kind="wrong">
                {one}
              </p>
            ))}
            {acting.said?.kind === 'refused' && <p data-kind="wrong">{acting.said.text}</p>}
          </div>
          <p>
            {words.readOn(today)}. {missing.join(' ')}
          </p>
        </div>
        <Button
          type="submit"
          kind="main"
          size="large"
          disabled={acting.busy || wrong.length > 0 || missing.length > 0}
        >
          {words.send}
        </Button>
      </div>
    </form>
  )
}
