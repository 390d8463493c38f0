import styles from '#components/menu/menu.module.css'

interface LeavesProps<Id extends string> {
  readonly legend: string
  readonly leaves: readonly {
    readonly id: Id
    readonly label: string
    /** How much of it is wrong or missing. */
    readonly open?: number
  }[]
  readonly chosen: Id
  readonly onChoose: (id: Id) => void
}

/** Parts of one panel, one of them shown. */
export function Leaves<Id extends string>({ legend, leaves, chosen, onChoose }: LeavesProps<Id>) {
  return (
    <nav className={styles.leaves} aria-label={legend}>
      {leaves.map(({ id, label }) => (
        <button
          key={id}
          type="button"
          aria-current={chosen === id ? 'true' : undefined}
          onClick={() => onChoose(id)}
        >
          {label}
        </button>
      ))}
    </nav>
  )
}
