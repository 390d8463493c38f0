import type { InputHTMLAttributes, ReactNode } from 'react'
import styles from '#components/ui/field.module.css'

interface FieldProps extends InputHTMLAttributes<HTMLInputElement> {
  readonly label: string
  /** What stands beside it: a unit, or a button. */
  readonly side?: ReactNode
  /** What is wrong with what was typed, and how to mend it. */
  readonly problem?: string | null
}

/** A line to type on, with its name above it. */
export function Field({ label, side, problem = null, ...rest }: FieldProps) {
  return (
    <div className={styles.field}>
      <label>
        <span>{label}</span>
        <input autoComplete="off" {...rest} aria-invalid={problem !== null || undefined} />
      </label>
      {side}
      {problem !== null && <p role="alert">{problem}</p>}
    </div>
  )
}
