import styles from '#components/care/label-answers.module.css'
import { useLabelWords } from '#components/care/label-words.tsx'
import { type LabelDraft, withClaim } from '#lib/rooms/care/views/label-draft.ts'
import { CLAIMS } from '#lib/station/codes/diets.ts'

interface LabelClaimsProps {
  readonly draft: LabelDraft
  readonly onChange: (draft: LabelDraft) => void
}

const CLAIM_WORDS = ['declared', 'not', null] as const

/** What a certificate or the label declares. */
export function LabelClaims({ draft, onChange }: LabelClaimsProps) {
  const words = useLabelWords()
  return (
    <>
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
