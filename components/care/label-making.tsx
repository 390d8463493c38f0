import styles from '#components/care/label-answers.module.css'
import { LabelSources } from '#components/care/label-sources.tsx'
import { useLabelWords } from '#components/care/label-words.tsx'
import {
  impliedTraits,
  type LabelDraft,
  traitsBySources,
  withClaim,
  withNoTraits,
  withTrait,
} from '#lib/rooms/care/views/label-draft.ts'
import type { Allergens } from '#lib/station/codes/askable.ts'
import { CLAIMS, TRAITS } from '#lib/station/codes/diets.ts'

interface LabelMakingProps {
  readonly station: Allergens
  readonly draft: LabelDraft
  readonly onChange: (draft: LabelDraft) => void
}

const CLAIM_WORDS = ['declared', 'not', null] as const

/** What a food is made of, for diets, and what a certificate declares. */
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
      <h3>{words.claims}</h3>
      <div className={styles.allergens}>
        {CLAIMS.map((claim) => (
          <fieldset key={claim} className={styles.allergen}>
            <legend>{words.claim[claim]}</legend>
            <div className={styles.words}>
              {CLAIM_WORDS.map((word) => (
                <label key={word ?? 'none'} data-word={word ?? 'none'}>
                  <input
                    type="radio"
                    name={`label-${claim}`}
                    checked={(draft.claims[claim] ?? null) === word}
                    onChange={() => onChange(withClaim(draft, claim, word))}
                  />
                  <span>{word === null ? words.notSaid : words.claimWord[word]}</span>
                </label>
              ))}
            </div>
          </fieldset>
        ))}
      </div>
    </>
  )
}
