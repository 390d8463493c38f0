import { useId, useState } from 'react'
import { MarkedWords } from '#components/menu/label/marked-words.tsx'
import styles from '#components/menu/label/package.module.css'
import { useLabelFormWords } from '#components/menu/label/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { type LabelForm, MOST_LETTERS, withList } from '#lib/editor/label-form/form.ts'
import type { Mark } from '#lib/station/label-words/read-list.ts'

interface PackageWordsProps {
  readonly form: LabelForm
  readonly marks: readonly Mark[]
  /** What is written at its head: the product. */
  readonly head: string
  readonly onChange: (form: LabelForm) => void
}

/** The words on the package, as paper: typed or pasted, then read with their marks. */
export function PackageWords({ form, marks, head, onChange }: PackageWordsProps) {
  const words = useLabelFormWords()
  const [isTyping, setTyping] = useState(form.list === '')
  const id = useId()
  const isMarked = !isTyping && form.list.trim() !== ''
  return (
    <div className={styles.paper}>
      <p className={styles.head}>{head}</p>
      {isMarked ? (
        <MarkedWords text={form.list} marks={marks} />
      ) : (
        <>
          <label className="visually-hidden" htmlFor={id}>
            {words.packageHint}
          </label>
          <textarea
            id={id}
            placeholder={words.packageHint}
            maxLength={MOST_LETTERS}
            spellCheck={false}
            autoCapitalize="off"
            value={form.list}
            onChange={({ target }) => onChange(withList(form, target.value))}
            onPaste={() => setTimeout(() => setTyping(false), 0)}
          />
        </>
      )}
      <Button kind="quiet" onClick={() => setTyping(isMarked)}>
        {isMarked ? words.changeWords : words.markWords}
      </Button>
    </div>
  )
}
