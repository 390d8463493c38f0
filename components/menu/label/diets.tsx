import { LabelGluten } from '#components/care/label-gluten.tsx'
import { LabelMaking } from '#components/care/label-making.tsx'
import { useLabelWords } from '#components/care/label-words.tsx'
import styles from '#components/menu/label/reading.module.css'
import { useLabelFormWords } from '#components/menu/label/words.tsx'
import { Choice } from '#components/ui/choice.tsx'
import type { LabelForm } from '#lib/editor/label-form/form.ts'
import { withClaim } from '#lib/rooms/care/views/label-draft.ts'
import type { Allergens } from '#lib/station/codes/askable.ts'
import { CLAIMS } from '#lib/station/codes/diets.ts'

interface DietsProps {
  readonly allergens: Allergens
  readonly form: LabelForm
  readonly onChange: (form: LabelForm) => void
}

/** What it is made of, what that comes from, what a certificate declares, and gluten beside wheat. */
export function Diets({ allergens, form, onChange }: DietsProps) {
  const words = useLabelFormWords()
  const care = useLabelWords()
  const change = (draft: LabelForm['draft']) => onChange({ ...form, draft })
  return (
    <section className={styles.diets} aria-label={words.diets}>
      <LabelGluten draft={form.draft} onChange={change} />
      <LabelMaking station={allergens} draft={form.draft} onChange={change} />
      {form.draft.traits === null && <p>{words.dietsUnsaid}</p>}
      <div className={styles.claims}>
        {CLAIMS.map((claim) => {
          const said = form.draft.claims[claim] ?? null
          return (
            <Choice
              key={claim}
              legend={words.claim(care.claim[claim], said === null)}
              ways={(['declared', 'not'] as const).map((id) => ({
                id,
                label: care.claimWord[id],
              }))}
              chosen={said}
              onChoose={(id) => change(withClaim(form.draft, claim, said === id ? null : id))}
            />
          )
        })}
      </div>
    </section>
  )
}
