import type { Walk } from '#components/pans/use-walk.ts'
import styles from '#components/pans/walker.module.css'
import { usePansWords } from '#components/pans/words.tsx'
import { Button } from '#components/ui/button.tsx'

/** On a phone: to the pan before and to the next, and where in the line one is. */
export function Walker({ walk, count }: { readonly walk: Walk; readonly count: number }) {
  const words = usePansWords()
  const { back, on, place } = words.onLine.walk
  return (
    <nav className={styles.walker} aria-label={words.line}>
      <Button aria-label={back} disabled={walk.index === 0} onClick={() => walk.go(walk.index - 1)}>
        ←
      </Button>
      <span>{place(walk.index + 1, count)}</span>
      <Button
        aria-label={on}
        disabled={walk.index === count - 1}
        onClick={() => walk.go(walk.index + 1)}
      >
        →
      </Button>
    </nav>
  )
}
