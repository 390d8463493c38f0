import { type ReactNode, useEffect, useRef } from 'react'
import styles from '#components/job/panel.module.css'
import { usePansWords } from '#components/pans/words.tsx'

interface PanelProps {
  readonly title: string
  readonly facts?: readonly string[]
  readonly onBack: () => void
  readonly children: ReactNode
}

/** Takes the place of the cards, so that the line above stays in sight. Escape goes back. */
export function Panel({ title, facts = [], onBack, children }: PanelProps) {
  const words = usePansWords()
  const heading = useRef<HTMLHeadingElement>(null)
  useEffect(() => heading.current?.focus({ preventScroll: true }), [])
  return (
    <section
      className={styles.panel}
      aria-label={title}
      onKeyDown={(event) => {
        if (event.key === 'Escape') onBack()
      }}
    >
      <div className={styles.top}>
        <h2 ref={heading} tabIndex={-1}>
          {title}
        </h2>
        <ul className={styles.facts}>
          {facts.map((fact) => (
            <li key={fact}>{fact}</li>
          ))}
        </ul>
        <button type="button" className={styles.back} onClick={onBack}>
          {words.close}
        </button>
      </div>
      <div className={styles.body}>{children}</div>
    </section>
  )
}
