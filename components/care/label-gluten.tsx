import styles from '#components/care/label-answers.module.css'
import { useLabelWords } from '#components/care/label-words.tsx'
import { asksStatement, type LabelDraft } from '#lib/rooms/care/views/label-draft.ts'

interface LabelGlutenProps {
  readonly draft: LabelDraft
  readonly onChange: (draft: LabelDraft) => void
}

/** Whether the label explains how wheat is in it and gluten isn't; asked only where wheat is. */
export function LabelGluten({ draft, onChange }: LabelGlutenProps) {
  const words = useLabelWords()
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
        <span>{words.glutenStatement}</span>
      </label>
    </fieldset>
  )
}
