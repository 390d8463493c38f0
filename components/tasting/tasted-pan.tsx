import styles from '#components/tasting/tasting.module.css'
import { useTastingWords } from '#components/tasting/words.tsx'
import type { Component } from '#lib/station/station-document.ts'
import type { ComponentTasted, Verdict } from '#lib/tasting/who-can-taste.ts'

const SHOWN: Readonly<Record<Verdict['is'], 'can' | 'cannot' | 'unknown'>> = {
  can: 'can',
  cannot: 'cannot',
  'not-sure': 'cannot',
  'not-asked': 'unknown',
}

interface TastedPanProps {
  readonly pan: string
  readonly component: Component
  readonly isTasted: boolean
  /** Who can have it; null while it is being planned. */
  readonly who: ComponentTasted | null
  /** Left away where the pan is only looked at. */
  readonly onTap?: () => void
}

/** A pan of the line: tasters stand over it by their numbers, struck through where they can't. */
export function TastedPan({ pan, component, isTasted, who, onTap }: TastedPanProps) {
  const words = useTastingWords()
  const name = (
    <span className={styles.name}>
      {component.short.map((part) => (
        <span key={part}>{part}</span>
      ))}
    </span>
  )
  if (onTap)
    return (
      <button
        type="button"
        className={styles.pan}
        data-notch={pan}
        data-tasted={isTasted || undefined}
        aria-pressed={isTasted}
        aria-label={component.name}
        onClick={onTap}
      >
        <span className={styles.over} aria-hidden="true">
          {isTasted ? words.isOn : ''}
        </span>
        {name}
      </button>
    )
  const said = (who?.tasters ?? []).map(({ taster, verdict }) => words[SHOWN[verdict.is]](taster))
  return (
    <div
      className={styles.pan}
      data-notch={pan}
      data-tasted={isTasted || undefined}
      role="img"
      aria-label={words.onPan(component.name, isTasted ? said : [words.isOff])}
    >
      <span className={styles.over} aria-hidden="true">
        {who?.tasters.map(({ taster, verdict }) => (
          <i key={taster} data-is={SHOWN[verdict.is]}>
            {taster}
          </i>
        ))}
      </span>
      {name}
    </div>
  )
}
