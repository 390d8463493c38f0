import { type ReactNode, useEffect, useRef } from 'react'
import { Button } from '#components/ui/button.tsx'
import styles from '#components/ui/panel.module.css'

interface PanelProps {
  readonly title: ReactNode
  /** What it is called for those who don't see it. */
  readonly label: string
  readonly facts?: readonly string[]
  /** What stands beside the title: parts of the panel to choose from. */
  readonly beside?: ReactNode
  /** Words of the way back; none where the panel is the screen's own. */
  readonly back?: string
  readonly onBack?: () => void
  readonly className?: string
  readonly children: ReactNode
}

/**
 * Where something is done to a pan, a build or a parcel, below the line. Within a notch the outline
 * is the notch's. Escape goes back; what it is about is heard first.
 */
export function Panel({
  title,
  label,
  facts = [],
  beside,
  back,
  onBack,
  className,
  children,
}: PanelProps) {
  const heading = useRef<HTMLHeadingElement>(null)
  const goesBack = onBack !== undefined
  useEffect(() => {
    if (goesBack) heading.current?.focus({ preventScroll: true })
  }, [goesBack])
  return (
    <section
      className={className ? `${styles.panel} ${className}` : styles.panel}
      data-notch-panel=""
      aria-label={label}
      onKeyDown={(event) => {
        if (event.key === 'Escape') onBack?.()
      }}
    >
      <header className={styles.top}>
        <h2 ref={heading} tabIndex={-1}>
          {title}
        </h2>
        {facts.length > 0 && (
          <ul>
            {facts.map((fact) => (
              <li key={fact}>{fact}</li>
            ))}
          </ul>
        )}
        {beside}
        {back !== undefined && onBack && (
          <Button kind="quiet" onClick={onBack}>
            {back}
          </Button>
        )}
      </header>
      {children}
    </section>
  )
}
