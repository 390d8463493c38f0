import styles from '#components/care/label-answers.module.css'
import { LabelSources } from '#components/care/label-sources.tsx'
import { useLabelWords } from '#components/care/label-words.tsx'
import {
  impliedTraits,
  type LabelDraft,
  traitsBySources,
  withNoTraits,
  withTrait,
} from '#lib/rooms/care/views/label-draft.ts'
import type { Allergens } from '#lib/station/codes/askable.ts'
import { TRAITS } from '#lib/station/codes/diets.ts'

interface LabelMakingProps {
  readonly station: Allergens
  readonly draft: LabelDraft
  readonly onChange: (draft: LabelDraft) => void
}

/** What a food is made of, for diets. */
export function LabelMaking({ station, draft, onChange }: LabelMakingProps) {
  const words = useLabelWords()
  const implied = [...impliedTraits(station, draft), ...traitsBySources(draft)]
  return (
    <>
      <fieldset className={styles.making}>
        <legend>{words.traits}</legend>
        <p>{words.traitsWhy}</p>
        {TRAITS.map((trait) => {
          const isImplied = implied.includes(trait)
          return (
            <label key={trait}>
              <input
                type="checkbox"
                checked={isImplied || (draft.traits?.includes(trait) ?? false)}
                disabled={isImplied}
                onChange={({ target }) => onChange(withTrait(draft, trait, target.checked))}
              />
              <span>
                {words.trait(trait)}
                {isImplied && <small> {words.implied}</small>}
              </span>
            </label>
          )
        })}
        <label data-none="">
          <input
            type="checkbox"
            checked={draft.traits?.length === 0}
            onChange={({ target }) => onChange(withNoTraits(draft, target.checked))}
          />
          <span>{implied.length > 0 ? words.noOtherTraits : words.noTraits}</span>
        </label>
      </fieldset>
      <LabelSources draft={draft} onChange={onChange} />
    </>
  )
}
