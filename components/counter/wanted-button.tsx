import styles from '#components/counter/wanted.module.css'
import { useCounterWords } from '#components/counter/words.tsx'

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
  const words = useCounterWords()
  return (
    <button
      type="button"
      className={styles.wanted}
      data-place={place}
      data-counted={isCounted || undefined}
      aria-label={isCounted ? words.wantedCountedOf(name) : words.wantedOf(name)}
      aria-disabled={isCounted}
      onClick={() => {
        if (!isCounted) onWanted()
      }}
    >
      {isCounted ? words.wantedCounted : words.wanted}
    </button>
  )
}
