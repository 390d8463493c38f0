import type { ReactNode } from 'react'
import styles from '#components/job/steps.module.css'
import { useFoodWords } from '#components/job/use-food-words.ts'

interface StepsProps {
  readonly label: string
  /** The value as it is read. */
  readonly shown: ReactNode
  readonly more?: string
  readonly by: readonly number[]
  /** What a step would make no other is dead. */
  readonly isDead?: (by: number) => boolean
  readonly onStep: (by: number) => void
}

/** A value that is read as words, changed by large steps: no keyboard, and gloves are enough. */
export function Steps({ label, shown, more = '', by, isDead, onStep }: StepsProps) {
  const words = useFoodWords()
  const step = (one: number) => (
    <button
      key={one}
      type="button"
      aria-label={one < 0 ? words.less(-one) : words.moreBy(one)}
      disabled={isDead?.(one)}
      onClick={() => onStep(one)}
    >
      {one < 0 ? `−${-one}` : `+${one}`}
    </button>
  )
  return (
    <div className={styles.steps} data-few={by.length < 4 || undefined}>
      {by.filter((one) => one < 0).map(step)}
      <output aria-label={label}>
        <span>{label}</span>
        <b>{shown}</b>
        {more !== '' && <span>{more}</span>}
      </output>
      {by.filter((one) => one > 0).map(step)}
    </div>
  )
}

interface PortionStepsProps {
  readonly label: string
  readonly value: number
  /** What that is as a kitchen says it. */
  readonly amount: string
  readonly least: number
  readonly most: number
  readonly onChange: (value: number) => void
}

/** A number of portions. */
export function PortionSteps({ label, value, amount, least, most, onChange }: PortionStepsProps) {
  const words = useFoodWords()
  const after = (by: number) => Math.min(most, Math.max(least, value + by))
  return (
    <Steps
      label={label}
      shown={
        <>
          {value} <small>{words.portionsUnit(value)}</small>
        </>
      }
      more={amount}
      by={[-5, -1, 1, 5]}
      isDead={(by) => after(by) === value}
      onStep={(by) => onChange(after(by))}
    />
  )
}
