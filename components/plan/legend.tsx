import styles from '#components/plan/plan.module.css'
import { usePlanWords } from '#components/plan/words.tsx'

interface LegendProps {
  readonly scale: number
  readonly hasLarder: boolean
  readonly isReal: boolean
}

/** What dots and blocks over the pans are; each pan says it in words. */
export function Legend({ scale, hasLarder, isReal }: LegendProps) {
  const { legend } = usePlanWords()
  return (
    <ul className={styles.legend} aria-hidden="true">
      <li>{legend.days(isReal)}</li>
      <li data-of="enough">{legend.enough}</li>
      <li data-of="short">{legend.short}</li>
      <li data-of="load">{legend.load(scale)}</li>
      {hasLarder && <li data-of="larder">{legend.larder}</li>}
    </ul>
  )
}
