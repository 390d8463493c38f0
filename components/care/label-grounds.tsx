import styles from '#components/care/label-answers.module.css'
import { useLabelWords } from '#components/care/label-words.tsx'
import { Choice } from '#components/ui/choice.tsx'
import type { LabelDraft } from '#lib/rooms/care/views/label-draft.ts'
import type { LabelGrounds as Grounds } from '#lib/rooms/care/views/label-grounds.ts'
import { ALLERGEN_SET_IDS } from '#lib/station/codes/allergen-sets.ts'

interface LabelGroundsProps {
  readonly draft: LabelDraft
  readonly grounds: Grounds
  readonly onChange: (grounds: Grounds) => void
}

/** What "not listed" and "declared free" stand on; of the latter only where something is. */
export function LabelGrounds({ draft, grounds, onChange }: LabelGroundsProps) {
  const words = useLabelWords()
  const isFree = Object.values(draft.declarations).includes('free')
  return (
    <div className={styles.grounds}>
      <Choice
        legend={words.law}
        ways={ALLERGEN_SET_IDS.map((id) => ({ id, label: words.laws[id] }))}
        chosen={grounds.law}
        onChoose={(law) => onChange({ ...grounds, law })}
      />
      <label>
        <input
          type="checkbox"
          checked={grounds.hasReadAll}
          onChange={({ target }) => onChange({ ...grounds, hasReadAll: target.checked })}
        />
        <b>{words.readAll}</b>
      </label>
      {isFree && (
        <Choice
          legend={words.freeBy}
          ways={(['printed', 'letter'] as const).map((id) => ({ id, label: words.freeByWays[id] }))}
          chosen={grounds.freeBy}
          onChoose={(freeBy) => onChange({ ...grounds, freeBy })}
        />
      )}
    </div>
  )
}
