import type { CSSProperties, KeyboardEvent, PointerEvent } from 'react'
import type { DrawnPan } from '#components/menu/line/drawn.ts'
import styles from '#components/menu/line/pan-above.module.css'
import { useMenuWords } from '#components/menu/words.tsx'

interface PanAboveProps {
  readonly pan: DrawnPan
  /** As it is counted from the left, from 1. */
  readonly well: number
  readonly style: CSSProperties
  readonly isChosen: boolean
  readonly isInHand: boolean
  /** It is under a pointer, and only its place is drawn here. */
  readonly isCarried: boolean
  readonly onPress: (event: PointerEvent<HTMLElement>) => void
  readonly onKeyDown: (event: KeyboardEvent) => void
  readonly onTap: () => void
}

/** One pan from above, in its well. */
export function PanAbove({
  pan: { pan, name, lines, size, isSet },
  well,
  style,
  isChosen,
  isInHand,
  isCarried,
  onPress,
  onKeyDown,
  onTap,
}: PanAboveProps) {
  const { line: words } = useMenuWords()
  return (
    <button
      type="button"
      className={styles.pan}
      style={style}
      data-pan={pan}
      data-notch={pan}
      data-size={size}
      data-set={isSet || undefined}
      data-hand={isCarried ? 'carried' : isInHand ? 'keys' : undefined}
      aria-label={words.pan(name === '' ? words.noName : name, size, well)}
      aria-pressed={isChosen}
      onPointerDown={onPress}
      onKeyDown={onKeyDown}
      onClick={onTap}
    >
      <span className={styles.food}>
        {lines.length === 0 ? <b>…</b> : lines.map((one) => <b key={one}>{one}</b>)}
        <span className={styles.size}>{words.size[size]}</span>
      </span>
    </button>
  )
}
