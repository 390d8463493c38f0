import { useState } from 'react'
import { Field } from '#components/ui/field.tsx'
import styles from '#components/ui/initials-field.module.css'
import { useSettled } from '#components/ui/settled.ts'

const MOST_LETTERS = 6

interface InitialsFieldProps {
  readonly label: string
  /** Names the place to type on, beside those who are there. */
  readonly others: string
  /** Initials that are one tap; where there are none, all are typed. */
  readonly there: readonly string[]
  readonly value: string
  readonly onChange: (initials: string) => void
}

/** Who did it: one tap of those who are there, or typed. Nobody is chosen until somebody taps. */
export function InitialsField({ label, others, there, value, onChange }: InitialsFieldProps) {
  const [typed, setTyped] = useState('')
  // A second tap on what was here before chooses nobody.
  const isSettled = useSettled(null)
  if (there.length === 0)
    return (
      <Field
        label={label}
        maxLength={MOST_LETTERS}
        autoCapitalize="characters"
        value={value}
        onChange={(event) => onChange(event.target.value)}
      />
    )
  const choose = (initials: string) => {
    if (!isSettled()) return
    setTyped('')
    onChange(initials === value ? '' : initials)
  }
  return (
    <fieldset className={styles.initials}>
      <legend>{label}</legend>
      <div className={styles.strip}>
        {there.map((initials) => (
          <button
            key={initials}
            type="button"
            aria-pressed={initials === value.trim()}
            onClick={() => choose(initials)}
          >
            {initials}
          </button>
        ))}
        <input
          aria-label={others}
          placeholder={others}
          autoComplete="off"
          autoCapitalize="characters"
          maxLength={MOST_LETTERS}
          value={value === '' ? '' : typed}
          onChange={(event) => {
            setTyped(event.target.value)
            onChange(event.target.value)
          }}
        />
      </div>
    </fieldset>
  )
}
