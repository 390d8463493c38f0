import styles from '#components/pans/label-answers.module.css'
import type { Declaration } from '#lib/menu/station-document.ts'
import { type LabelDraft, type LabelLine, withWord } from '#lib/views/label-draft.ts'
import { startingWith } from '#lib/words/findings-en.ts'
import { labelWords as words } from '#lib/words/labels-en.ts'
import { needName } from '#lib/words/service-en.ts'

interface LabelAllergenProps {
  readonly line: LabelLine
  readonly draft: LabelDraft
  readonly onChange: (draft: LabelDraft) => void
}

const WORDS: readonly (Declaration | null)[] = ['contains', 'may-contain', 'free', null]
const KIND_WORDS: readonly Declaration[] = ['contains', 'may-contain', 'free', 'unknown']

/** What the label says of one allergen, and of its kinds where someone asks for them. */
export function LabelAllergen({ line: { code, kinds }, draft, onChange }: LabelAllergenProps) {
  const { declarations } = draft
  const said = kinds.filter((kind) => declarations[kind] !== undefined).length
  return (
    <fieldset className={styles.allergen}>
      <legend>{startingWith(needName(code))}</legend>
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
                <span>{startingWith(needName(kind))}</span>
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
