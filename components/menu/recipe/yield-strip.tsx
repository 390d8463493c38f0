import styles from '#components/menu/recipe/recipe.module.css'
import type { CardYields } from '#components/menu/recipe/use-yields.ts'
import { useRecipeWords } from '#components/menu/recipe-words.tsx'

/** Dots of this many rows, so that equal ones don't hide each other. */
const ROWS = 3
/** On both sides of the outermost. */
const ROOM = 0.08

/** Own batches as dots to one scale, their range as food behind, and the card's yield as a line. */
export function YieldStrip({ own, corrected }: Pick<CardYields, 'own' | 'corrected'>) {
  const { measured: words } = useRecipeWords()
  const all = own.map(({ ratio }) => ratio)
  const low = Math.max(0, Math.min(1, ...all) - ROOM)
  const high = Math.max(1, ...all) + ROOM
  const at = (ratio: number): number =>
    (100 * (Math.min(high, Math.max(low, ratio)) - low)) / (high - low)
  const range = corrected?.range
  return (
    <div className={styles.strip} aria-hidden="true">
      {range && (
        <i
          data-is="range"
          style={{ left: `${at(range.low)}%`, width: `${at(range.high) - at(range.low)}%` }}
        />
      )}
      <i data-is="card" data-right={at(1) > 60 || undefined} style={{ left: `${at(1)}%` }}>
        {words.card}
      </i>
      {own.map(({ id, ratio, out }, index) => (
        <i
          key={id}
          data-is={out ? 'out' : 'batch'}
          style={{ left: `${at(ratio)}%`, bottom: `${4 + (index % ROWS) * 15}px` }}
        />
      ))}
    </div>
  )
}
