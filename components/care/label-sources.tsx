import styles from '#components/care/label-answers.module.css'
import { useLabelWords } from '#components/care/label-words.tsx'
import {
  type LabelDraft,
  sourcedTraits,
  withSource,
  withSources,
} from '#lib/rooms/care/views/label-draft.ts'
import { SOURCES_OF } from '#lib/station/codes/diets.ts'

interface LabelSourcesProps {
  readonly draft: LabelDraft
  readonly onChange: (draft: LabelDraft) => void
}

/** What each ticked trait comes from, for itself: another animal on the label says nothing of it. */
export function LabelSources({ draft, onChange }: LabelSourcesProps) {
  const words = useLabelWords()
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
          <span>{words.sourceName(source)}</span>
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
