import { LabelGluten } from '#components/care/label-gluten.tsx'
import { LabelMaking } from '#components/care/label-making.tsx'
import styles from '#components/menu/label/reading.module.css'
import { useLabelFormWords } from '#components/menu/label/words.tsx'
import type { LabelForm } from '#lib/editor/label-form/form.ts'
import type { Allergens } from '#lib/station/codes/askable.ts'

interface DietsProps {
  readonly allergens: Allergens
  readonly form: LabelForm
  readonly onChange: (form: LabelForm) => void
}

/** What it is made of, what that comes from, what a certificate declares, and gluten beside wheat. */
export function Diets({ allergens, form, onChange }: DietsProps) {
  const words = useLabelFormWords()
  const change = (draft: LabelForm['draft']) => onChange({ ...form, draft })
  return (
    <section className={styles.diets} aria-label={words.diets}>
      <LabelGluten draft={form.draft} onChange={change} />
      <LabelMaking station={allergens} draft={form.draft} onChange={change} />
      {form.draft.traits === null && <p>{words.dietsUnsaid}</p>}
    </section>
  )
}
