import styles from '#components/job/portion-steps.module.css'
import { useFoodWords } from '#components/job/use-food-words.ts'

interface StepsProps {
  readonly label: string
  /** The value as it is read. */
  readonly shown: string
  readonly steps: readonly number[]
  readonly onStep: (by: number) => void
}

/** A value that is read as words, changed by large steps. */
export function MinuteSteps({ label, shown, steps, onStep }: StepsProps) {
  const words = useFoodWords()
  const step = (by: number) => (
    <button
      key={by}
      type="button"
      className={styles.step}
      aria-label={by < 0 ? words.less(-by) : words.moreBy(by)}
      onClick={() => onStep(by)}
    >
      {by < 0 ? `−${-by}` : `+${by}`}
    </button>
  )
  return (
    <div className={styles.steps} data-few={steps.length < 4}>
      {steps.filter((by) => by < 0).map(step)}
      <output className={styles.value} aria-label={label}>
        <span className={styles.label}>{label}</span>
        <span>
          <b className={styles.said}>{shown}</b>
        </span>
      </output>
      {steps.filter((by) => by > 0).map(step)}
    </div>
  )
}
