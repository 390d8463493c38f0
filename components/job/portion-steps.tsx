import styles from '#components/job/portion-steps.module.css'
import { useFoodWords } from '#components/job/use-food-words.ts'

interface PortionStepsProps {
  readonly label: string
  readonly value: number
  /** What that is as a kitchen says it. */
  readonly amount: string
  readonly least: number
  readonly most: number
  readonly onChange: (value: number) => void
}

/** A number of portions by large steps: no keyboard comes up, and gloves are enough. */
export function PortionSteps({ label, value, amount, least, most, onChange }: PortionStepsProps) {
  const words = useFoodWords()
  const step = (by: number) => {
    const next = Math.min(most, Math.max(least, value + by))
    return (
      <button
        type="button"
        className={styles.step}
        aria-label={by < 0 ? words.less(-by) : words.moreBy(by)}
        disabled={next === value}
        onClick={() => onChange(next)}
      >
        {by < 0 ? `−${-by}` : `+${by}`}
      </button>
    )
  }
  return (
    <div className={styles.steps}>
      {step(-5)}
      {step(-1)}
      <output className={styles.value} aria-label={label}>
        <span className={styles.label}>{label}</span>
        <span>
          <b>{value}</b> {words.portionsUnit(value)}
        </span>
        <span className={styles.weight}>{amount}</span>
      </output>
      {step(1)}
      {step(5)}
    </div>
  )
}
