import type { Walk } from '#components/pans/use-walk.ts'
import styles from '#components/pans/walker.module.css'
import { usePansWords } from '#components/pans/words.tsx'
import { Button } from '#components/ui/button.tsx'

interface WalkerProps {
  readonly walk: Walk
  readonly count: number
  /** What comes first of all, where it is of another pan than the one in sight. */
  readonly first: {
    readonly title: string
    readonly isUrgent: boolean
    readonly go: () => void
  } | null
}

/** On a phone: to the pan before and to the next, where in the line one is, and what comes first. */
export function Walker({ walk, count, first }: WalkerProps) {
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
      {first && (
        <Button className={styles.first} kind={first.isUrgent ? 'no' : 'plain'} onClick={first.go}>
          {words.doNext}: {first.title}
        </Button>
      )}
    </nav>
  )
}
