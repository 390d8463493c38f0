import type { ReactNode } from 'react'
import styles from '#components/ui/choice.module.css'

interface ChoiceProps<Id extends string> {
  readonly legend: string
  /** The legend is heard, not seen: the row says by itself what it is about. */
  readonly isBare?: boolean
  readonly ways: readonly {
    readonly id: Id
    readonly label: ReactNode
    readonly more?: ReactNode
    readonly off?: boolean
    /** Of a need that is kept apart: hatched while chosen. */
    readonly isCare?: boolean
  }[]
  readonly chosen: Id | null
  readonly onChoose: (id: Id) => void
}

/** More of them stand on a second row where there is no room: none is cut off. */
const MOST_ON_ONE_ROW = 4

/** One of several ways, side by side in one frame, as one strip that is slid along. */
export function Choice<Id extends string>({
  legend,
  isBare,
  ways,
  chosen,
  onChoose,
}: ChoiceProps<Id>) {
  return (
    <fieldset className={styles.choice}>
      <legend className={isBare ? 'visually-hidden' : undefined}>{legend}</legend>
      <div className={styles.ways} data-many={ways.length > MOST_ON_ONE_ROW || undefined}>
        {ways.map(({ id, label, more, off, isCare }) => (
          <button
            key={id}
            type="button"
            disabled={off === true}
            aria-pressed={chosen === id}
            data-care={isCare || undefined}
            onClick={() => onChoose(id)}
          >
            <b>{label}</b>
            {more !== undefined && <span>{more}</span>}
          </button>
        ))}
      </div>
    </fieldset>
  )
}
