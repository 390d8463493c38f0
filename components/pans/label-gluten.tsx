import styles from '#components/pans/label-answers.module.css'
import { asksStatement, type LabelDraft } from '#lib/views/label-draft.ts'
import { GLUTEN_STATEMENT } from '#lib/words/label-problems-en.ts'
import { labelWords as words } from '#lib/words/labels-en.ts'

interface LabelGlutenProps {
  readonly draft: LabelDraft
  readonly onChange: (draft: LabelDraft) => void
}

/** Whether the label explains how wheat is in it and gluten isn't; asked only where wheat is. */
export function LabelGluten({ draft, onChange }: LabelGlutenProps) {
  if (!asksStatement(draft)) return null
  return (
    <fieldset className={styles.making} data-wide="">
      <legend>{words.statement}</legend>
      <label>
        <input
          type="checkbox"
          checked={draft.glutenStatement}
          onChange={({ target }) => onChange({ ...draft, glutenStatement: target.checked })}
        />
        <span>{GLUTEN_STATEMENT}</span>
      </label>
    </fieldset>
  )
}
