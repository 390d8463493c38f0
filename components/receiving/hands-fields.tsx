import { useState } from 'react'
import type { keptHands } from '#components/job/kept-hands.ts'
import styles from '#components/receiving/panel.module.css'
import { useReceivingWords } from '#components/receiving/words.tsx'
import { Field } from '#components/ui/field.tsx'

type Hands = ReturnType<typeof keptHands>

interface HandsFieldsProps {
  readonly hands: Hands
  readonly onChange: (hands: Hands) => void
}

/** Who reads, with which probe: typed once a round, then said in a line. */
export function HandsFields({ hands, onChange }: HandsFieldsProps) {
  const words = useReceivingWords()
  const isSaid = hands.initials !== '' && hands.probe !== ''
  const [isTyped, setTyped] = useState(!isSaid)
  if (isSaid && !isTyped)
    return (
      <p className={styles.signed}>
        <span>{words.signed(hands.initials, hands.probe)}</span>
        <button type="button" className={styles.little} onClick={() => setTyped(true)}>
          {words.signAnew}
        </button>
      </p>
    )
  return (
    <div className={styles.hands}>
      <Field
        label={words.initials}
        value={hands.initials}
        maxLength={6}
        onChange={(event) => {
          setTyped(true)
          onChange({ ...hands, initials: event.target.value })
        }}
      />
      <Field
        label={words.probe}
        value={hands.probe}
        maxLength={40}
        onChange={(event) => {
          setTyped(true)
          onChange({ ...hands, probe: event.target.value })
        }}
      />
    </div>
  )
}
