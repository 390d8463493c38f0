import styles from '#components/pans/pan-signs.module.css'

/** Drawn: the typeface has no clock. */
function ClockSign() {
  return (
    <svg className={styles.clock} viewBox="0 0 16 16" aria-hidden="true">
      <circle cx="8" cy="8" r="6.5" />
      <path d="M8 4.2V8l2.6 1.9" />
    </svg>
  )
}

interface PanSignsProps {
  /** Each is '' where there is nothing to say. */
  readonly throwOut: string
  readonly readBy: string
  readonly kept: string
  readonly standIn: string
  /** How far off its scoops run. */
  readonly bias: string
  readonly backup: string
  readonly isSoon: boolean
}

/** Small words over a pan's food, only where they matter. */
export function PanSigns({ throwOut, readBy, kept, standIn, bias, backup, isSoon }: PanSignsProps) {
  return (
    <span className={styles.signs}>
      {throwOut !== '' && (
        <span className={styles.sign} data-kind={isSoon ? 'soon' : 'clock'}>
          <ClockSign />
          {throwOut}
        </span>
      )}
      {readBy !== '' && (
        <span className={styles.sign} data-kind="read">
          <ClockSign />
          {readBy}
        </span>
      )}
      {kept !== '' && <span className={styles.sign}>{kept}</span>}
      {standIn !== '' && <span className={styles.sign}>{standIn}</span>}
      {bias !== '' && <span className={styles.sign}>{bias}</span>}
      {backup !== '' && <span className={styles.sign}>{backup}</span>}
    </span>
  )
}
