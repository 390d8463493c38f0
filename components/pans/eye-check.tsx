import { useFoodWords } from '#components/job/use-food-words.ts'
import styles from '#components/pans/eye-check.module.css'

const LOOKS = [4, 3, 2, 1, 0] as const

export type Look = (typeof LOOKS)[number]

interface EyeCheckProps {
  readonly busy: boolean
  readonly onLook: (look: Look) => void
}

/** How full a pan looks, in one tap: five pans as one sees them from above the line. */
export function EyeCheck({ busy, onLook }: EyeCheckProps) {
  const words = useFoodWords()
  return (
    <fieldset className={styles.check}>
      <legend>{words.look}</legend>
      {LOOKS.map((look) => (
        <button key={look} type="button" disabled={busy} onClick={() => onLook(look)}>
          <span className={styles.pan} aria-hidden="true">
            <span data-look={look} />
          </span>
          {words.looks[look]}
        </button>
      ))}
    </fieldset>
  )
}
