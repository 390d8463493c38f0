import styles from '#components/menu/recipe/recipe.module.css'

/** Two lengths to one scale: what is made, and what its portions take. */
export function MadeAndTaken({
  over,
  noted,
  makes,
  takes,
}: {
  /** 0.65: so much more is made than taken; below 0, so much less. */
  readonly over: number
  readonly noted: boolean
  readonly makes: string
  readonly takes: string
}) {
  const longest = Math.max(1, 1 + over)
  const length = (share: number) => `${Math.max(1, (share / longest) * 100)}%`
  return (
    <ol className={styles.lengths} data-noted={noted || undefined}>
      <li>
        <span>{makes}</span>
        <i data-made="" style={{ width: length(1 + over) }} />
      </li>
      <li>
        <i style={{ width: length(1) }} />
        <b>{takes}</b>
      </li>
    </ol>
  )
}
