import styles from '#components/counter/wanted.module.css'
import { counter } from '#lib/words/counter-en.ts'

/** One tap: a guest wanted it, and it was gone. */
export function WantedButton({
  name,
  isCounted,
  place,
  onWanted,
}: {
  readonly name: string
  readonly isCounted: boolean
  /** At the end of an item's row, or under a pan. */
  readonly place: 'row' | 'pan'
  readonly onWanted: () => void
}) {
  return (
    <button
      type="button"
      className={styles.wanted}
      data-place={place}
      data-counted={isCounted || undefined}
      aria-label={isCounted ? counter.wantedCountedOf(name) : counter.wantedOf(name)}
      aria-disabled={isCounted}
      onClick={() => {
        if (!isCounted) onWanted()
      }}
    >
      {isCounted ? counter.wantedCounted : counter.wanted}
    </button>
  )
}
