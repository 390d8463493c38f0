import styles from '#components/pans/label-answers.module.css'
import { SOURCES_OF } from '#lib/needs/diets.ts'
import { type LabelDraft, sourcedTraits, withSource, withSources } from '#lib/views/label-draft.ts'
import { sourceName } from '#lib/words/label-problems-en.ts'
import { labelWords as words } from '#lib/words/labels-en.ts'

interface LabelSourcesProps {
  readonly draft: LabelDraft
  readonly onChange: (draft: LabelDraft) => void
}

/** What each ticked trait comes from, for itself: another animal on the label says nothing of it. */
export function LabelSources({ draft, onChange }: LabelSourcesProps) {
  return sourcedTraits(draft).map((trait) => (
    <fieldset key={trait} className={styles.making}>
      <legend>{words.source(trait)}</legend>
      {SOURCES_OF[trait].map((source) => (
        <label key={source}>
          <input
            type="checkbox"
            checked={draft.sources[trait]?.includes(source) ?? false}
            onChange={({ target }) => onChange(withSource(draft, trait, source, target.checked))}
          />
          <span>{sourceName(source)}</span>
        </label>
      ))}
      <label data-none="">
        <input
          type="checkbox"
          checked={draft.sources[trait]?.length === 0}
          onChange={({ target }) => onChange(withSources(draft, trait, target.checked ? [] : null))}
        />
        <span>{words.notSaid}</span>
      </label>
    </fieldset>
  ))
}
