import styles from '#components/receiving/panel.module.css'
import { useReceivingWords } from '#components/receiving/words.tsx'
import { Button } from '#components/ui/button.tsx'
import type { SentBack as Why } from '#lib/larder/delivery.ts'

/** What people see and the tool can't; what a reading or a date shows it says by itself. */
const SEEN = ['damaged', 'signs-of-warmth', 'wrong-food', 'other'] as const satisfies readonly Why[]

interface SendBackProps {
  readonly isSigned: boolean
  /** How it comes is said. */
  readonly canSay: boolean
  readonly onWhy: (why: Why) => void
  readonly onBack: () => void
}

/** Why it goes back: one tap on the reason. */
export function SendBack({ isSigned, canSay, onWhy, onBack }: SendBackProps) {
  const words = useReceivingWords()
  const lacks = !isSigned ? words.lacks.initials : !canSay ? words.lacks.comes : null
  return (
    <fieldset className={styles.back}>
      <legend>{words.sendBackFor}</legend>
      {SEEN.map((why) => (
        <Button
          key={why}
          kind="no"
          className={styles.low ?? ''}
          lacks={lacks}
          onClick={() => onWhy(why)}
        >
          {words.sendBackWhy(why)}
        </Button>
      ))}
      <Button kind="quiet" className={styles.low ?? ''} onClick={onBack}>
        {words.cancel}
      </Button>
    </fieldset>
  )
}
