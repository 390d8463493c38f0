import styles from '#components/tasting/tasting.module.css'
import { useTastingWords } from '#components/tasting/words.tsx'
import type { Component } from '#lib/station/station-document.ts'
import type { ComponentTasted, Verdict } from '#lib/tasting/who-can-taste.ts'

const SHOWN = {
  can: 'can',
  cannot: 'cannot',
  'not-sure': 'cannot',
  'not-asked': 'unknown',
} as const satisfies Readonly<Record<Verdict['is'], string>>

const ROWS = ['can', 'cannot', 'unknown'] as const

interface TastedPanProps {
  readonly pan: string
  readonly component: Component
  readonly isTasted: boolean
  /** Who can have it; null while it is being planned. */
  readonly who: ComponentTasted | null
  /** Left away where the pan is only looked at. */
  readonly onTap?: () => void
}

/** Who can have it, over its pan: each row a word and a pattern of its own. */
function Over({ who }: { readonly who: ComponentTasted }) {
  const words = useTastingWords()
  return ROWS.map((is) => {
    const numbers = who.tasters.filter(({ verdict }) => SHOWN[verdict.is] === is)
    return numbers.length === 0 ? null : (
      <i key={is} data-is={is}>
        {words.over[is](numbers.map(({ taster }) => taster))}
      </i>
    )
  })
}

/** A pan of the line, with who can taste of it above. */
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
          {isTasted && <i data-is="can">{words.isOn}</i>}
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
        {who && <Over who={who} />}
      </span>
      {name}
    </div>
  )
}
