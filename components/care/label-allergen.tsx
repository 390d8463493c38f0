import styles from '#components/care/label-answers.module.css'
import { useLabelWords } from '#components/care/label-words.tsx'
import { type LabelDraft, type LabelLine, withWord } from '#lib/rooms/care/views/label-draft.ts'
import type { Declaration } from '#lib/station/station-document.ts'

interface LabelAllergenProps {
  readonly line: LabelLine
  readonly draft: LabelDraft
  readonly onChange: (draft: LabelDraft) => void
}

const WORDS: readonly (Declaration | null)[] = [
  'contains',
  'may-contain',
  'not-listed',
  'free',
  null,
]
const KIND_WORDS: readonly Declaration[] = [
  'contains',
  'may-contain',
  'not-listed',
  'free',
  'unknown',
]

/** What the label says of one allergen, and of its kinds where someone asks for them. */
export function LabelAllergen({ line: { code, kinds }, draft, onChange }: LabelAllergenProps) {
  const words = useLabelWords()
  const { declarations } = draft
  const said = kinds.filter((kind) => declarations[kind] !== undefined).length
  return (
    <fieldset className={styles.allergen}>
      <legend>{words.startingWith(words.needName(code))}</legend>
      <div className={styles.words}>
        {WORDS.map((word) => (
          <label key={word ?? 'none'} data-word={word ?? 'none'}>
            <input
              type="radio"
              name={`label-${code}`}
              checked={(declarations[code] ?? null) === word}
              onChange={() => onChange(withWord(draft, code, word))}
            />
            <span>{word === null ? words.notSaid : words.word[word]}</span>
          </label>
        ))}
      </div>
      {kinds.length > 0 && (
        <details>
          <summary>{words.kinds(code, said)}</summary>
          <div className={styles.kinds}>
            {kinds.map((kind) => (
              <label key={kind}>
                <span>{words.startingWith(words.needName(kind))}</span>
                <select
                  value={declarations[kind] ?? ''}
                  onChange={({ target }) =>
                    onChange(
                      withWord(draft, kind, KIND_WORDS.find((one) => one === target.value) ?? null),
                    )
                  }
                >
                  <option value="">{words.asGroup}</option>
                  {KIND_WORDS.map((word) => (
                    <option key={word} value={word}>
                      {words.word[word]}
                    </option>
                  ))}
                </select>
              </label>
            ))}
          </div>
        </details>
      )}
    </fieldset>
  )
}
