import { useState } from 'react'
import styles from '#components/start/in-charge.module.css'
import { useInChargeWords } from '#components/start/in-charge-words.tsx'

interface PassphraseFieldProps {
  readonly label: string
  readonly value: string
  /** A new one, so that a browser doesn't fill in the one it knows. */
  readonly isNew?: boolean
  readonly onChange: (value: string) => void
}

/** Hidden while it is typed, unless whoever types wants to see it. */
export function PassphraseField({ label, value, isNew, onChange }: PassphraseFieldProps) {
  const words = useInChargeWords()
  const [isShown, setShown] = useState(false)
  return (
    <div className={styles.field}>
      <label>
        <span>{label}</span>
        <input
          type={isShown ? 'text' : 'password'}
          autoComplete={isNew ? 'new-password' : 'current-password'}
          autoCapitalize="off"
          autoCorrect="off"
          spellCheck={false}
          maxLength={200}
          value={value}
          onChange={(event) => onChange(event.target.value)}
        />
      </label>
      <button type="button" aria-pressed={isShown} onClick={() => setShown(!isShown)}>
        {isShown ? words.hide : words.show}
      </button>
    </div>
  )
}
