import type { Held } from '#components/menu/line/drawn.ts'
import styles from '#components/menu/line/well-foot.module.css'
import { useMenuWords } from '#components/menu/words.tsx'
import type { PanSize } from '#lib/measure/pans.ts'
import { sizesThatFit } from '#lib/measure/well-layout.ts'

interface WellFootProps {
  readonly number: number
  readonly held: Held | null
  readonly sizes: readonly PanSize[]
  readonly isChosen: boolean
  /** The size of the pan in the hand that doesn't fit. */
  readonly refused: PanSize | null
  readonly isAimed: boolean
  readonly onTap: () => void
}

/** What is said over a well: how it is held, and what still fits into it. */
export function WellFoot({
  number,
  held,
  sizes,
  isChosen,
  refused,
  isAimed,
  onTap,
}: WellFootProps) {
  const { line: words } = useMenuWords()
  const [largest = null] = sizesThatFit(sizes)
  const room = largest === null ? words.full : sizes.length === 0 ? words.bare : words.free(largest)
  return (
    <button
      type="button"
      className={styles.foot}
      data-refused={refused !== null || undefined}
      aria-pressed={isChosen}
      aria-label={`${words.well(number, held)}: ${room}`}
      onClick={onTap}
    >
      {refused !== null ? (
        <b role="alert">{words.noRoom(refused, largest)}</b>
      ) : (
        <>
          <b data-held={held ?? 'none'}>{held === null ? words.noHeld : words.held[held]}</b>
          <span>{isAimed ? words.fits : room}</span>
        </>
      )}
    </button>
  )
}
