import styles from '#components/menu/label/reading.module.css'
import { useLabelFormWords } from '#components/menu/label/words.tsx'
import { Choice } from '#components/ui/choice.tsx'
import { type LabelForm, withPlain } from '#lib/editor/label-form/form.ts'
import { ALLERGEN_SET_IDS } from '#lib/station/codes/allergen-sets.ts'

interface PackFactsProps {
  readonly form: LabelForm
  readonly onChange: (form: LabelForm) => void
}

/** Which law its pack is under, and whether it is one plain food, which has no list. */
export function PackFacts({ form, onChange }: PackFactsProps) {
  const words = useLabelFormWords()
  return (
    <>
      <Choice
        legend={words.law}
        ways={ALLERGEN_SET_IDS.map((id) => ({ id, label: words.laws[id] }))}
        chosen={form.law}
        onChoose={(law) => onChange({ ...form, law })}
      />
      <label className={styles.tick}>
        <input
          type="checkbox"
          checked={form.isPlain}
          onChange={({ target }) => onChange(withPlain(form, target.checked))}
        />
        <span>
          <b>{words.plain}</b> {words.plainWhy}
        </span>
      </label>
    </>
  )
}
