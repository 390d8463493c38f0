import { useDeferredValue, useMemo, useState } from 'react'
import { AllergenTiles } from '#components/menu/label/allergen-tiles.tsx'
import { BulkAnswers } from '#components/menu/label/bulk-answers.tsx'
import { Diets } from '#components/menu/label/diets.tsx'
import { KindTiles } from '#components/menu/label/kind-tiles.tsx'
import { PackFacts } from '#components/menu/label/pack-facts.tsx'
import { PackageWords } from '#components/menu/label/package-words.tsx'
import { Photo } from '#components/menu/label/photo.tsx'
import { Problems } from '#components/menu/label/problems.tsx'
import styles from '#components/menu/label/reading.module.css'
import { SignOff } from '#components/menu/label/sign-off.tsx'
import { WordRow } from '#components/menu/label/word-row.tsx'
import { useLabelFormWords } from '#components/menu/label/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Choice } from '#components/ui/choice.tsx'
import { Note } from '#components/ui/note.tsx'
import {
  formOf,
  type LabelForm,
  NEW_FORM,
  withAnswer,
  withKind,
  writtenLabel,
} from '#lib/editor/label-form/form.ts'
import { againstWords, formProblems, stillOpen } from '#lib/editor/label-form/problems.ts'
import { marksOf, tilesOf } from '#lib/editor/label-form/tiles.ts'
import type { Allergens } from '#lib/station/codes/askable.ts'
import type { Label } from '#lib/station/label.ts'
import type { Declaration } from '#lib/station/station-document.ts'

export interface LabelReadingProps {
  readonly allergens: Allergens
  /** Civil date at the station. */
  readonly today: string
  readonly name: string
  /** Maker and pack, as the head of the paper. */
  readonly head: string
  /** As it was written down last; null: never. */
  readonly before: Label | null
  /** Whether it is asked if the pans hold this product: not of a substitute. */
  readonly asksWhich: boolean
  readonly busy: boolean
  readonly refused: string | null
  readonly onWrite: (label: Label, is: 'same' | 'other', passphrase: string) => void
}

/** A label is read: its words, an answer for each allergen, what it is made of, and who writes it down. */
export function LabelReading(props: LabelReadingProps) {
  const { allergens, today, before } = props
  const words = useLabelFormWords()
  const [form, setForm] = useState<LabelForm>(NEW_FORM)
  const [taken, setTaken] = useState<Declaration | null>(null)
  const [said, setSaid] = useState('')
  const [is, setIs] = useState<'same' | 'other' | null>(null)
  const list = useDeferredValue(form.list)
  const marks = useMemo(() => marksOf(allergens, list), [allergens, list])
  const tiles = tilesOf(allergens, form, marks)
  const problems = formProblems(allergens, form, tiles)
  const open = stillOpen(tiles)
  const isOfFree = problems.some(({ at }) => at === 'free') || form.freeBy !== null
  const isUnreadWhole = problems.some(({ why }) => why === 'not-read-whole') || form.hasReadAll
  const asksWhich = props.asksWhich && before !== null
  const tap = (code: string) => {
    if (taken === null) return setSaid(words.takeFirst)
    setForm(withAnswer(form, allergens, code, taken))
  }
  const lacks =
    open > 0
      ? words.stillOpen(open)
      : problems.length > 0
        ? words.wrong(problems.length)
        : asksWhich && is === null
          ? words.is
          : null
  const write = (passphrase: string) => {
    if (lacks !== null) return
    props.onWrite(writtenLabel(allergens, form, today), is ?? 'other', passphrase)
  }
  return (
    <div className={styles.reading}>
      <div className={styles.pack}>
        <h3>{words.package}</h3>
        <PackageWords form={form} marks={marks} head={props.head} onChange={setForm} />
        <Problems problems={problems} at="words" />
        {isUnreadWhole && !form.isPlain && (
          <label className={styles.tick}>
            <input
              type="checkbox"
              checked={form.hasReadAll}
              onChange={({ target }) => setForm({ ...form, hasReadAll: target.checked })}
            />
            <b>{words.readAll}</b>
          </label>
        )}
        <PackFacts form={form} onChange={setForm} />
        <Problems problems={problems} at="law" />
        <Photo
          hash={form.photo}
          name={props.name}
          onKept={(photo) => setForm((now) => ({ ...now, photo }))}
        />
        {before !== null && (
          <Button kind="quiet" onClick={() => setForm(formOf(allergens, before))}>
            {words.fromBefore}
          </Button>
        )}
      </div>
      <div className={styles.answers}>
        <WordRow
          taken={taken}
          onTake={(word) => {
            setTaken(word)
            setSaid('')
          }}
        />
        <p role="status" className={styles.said}>
          {said}
        </p>
        <AllergenTiles
          tiles={tiles}
          wrong={problems.flatMap((one) => ('code' in one ? [one.code] : []))}
          onTap={tap}
        />
        <BulkAnswers
          allergens={allergens}
          form={form}
          tiles={tiles}
          marks={marks}
          onChange={setForm}
        />
        {tiles
          .filter(({ kinds, answer }) => kinds.length > 0 && answer === 'contains')
          .map((tile) => (
            <KindTiles
              key={tile.code}
              form={form}
              tile={tile}
              onTap={(kind) =>
                taken === null
                  ? setSaid(words.takeFirst)
                  : setForm(withKind(form, tile.code, kind, taken))
              }
            />
          ))}
        <Problems problems={problems} at="allergens" />
        <Problems problems={problems} at="gluten" />
        {againstWords(tiles).map((tile) => (
          <Note key={tile.code} kind="watch">
            {words.against(tile.code, tile.words)}
          </Note>
        ))}
        {isOfFree && (
          <>
            <Problems problems={problems} at="free" />
            <Choice
              legend={words.freeBy}
              ways={(['printed', 'letter'] as const).map((id) => ({
                id,
                label: words.freeByWays[id],
              }))}
              chosen={form.freeBy}
              onChoose={(freeBy) => setForm({ ...form, freeBy })}
            />
          </>
        )}
      </div>
      <div className={styles.end}>
        <Diets allergens={allergens} form={form} onChange={setForm} />
        <Problems problems={problems} at="diets" />
        {asksWhich && (
          <Choice
            legend={words.is}
            ways={(['same', 'other'] as const).map((id) => ({ id, label: words.isWays[id] }))}
            chosen={is}
            onChoose={setIs}
          />
        )}
        <SignOff
          lacks={lacks}
          today={today}
          refused={props.refused}
          busy={props.busy}
          onWrite={write}
        />
      </div>
    </div>
  )
}
