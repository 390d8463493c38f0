import styles from '#components/counter/ask.module.css'
import { useCounterWords } from '#components/counter/words.tsx'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import { isDiet, type Need, type NeedCode } from '#lib/station/codes/codes.ts'

/** Letters of the longest word that stands in a tile at full size. */
const LONG_WORD = 10
const LONG = 14

/** An allergen or a diet, and what was told of it. */
export function NeedTile({
  code,
  need,
  stays,
  kinds,
  tap,
}: {
  readonly code: NeedCode
  readonly need: Need | undefined
  readonly stays: boolean
  readonly kinds: readonly Need[]
  readonly tap: (act: Act) => void
}) {
  const words = useCounterWords()
  const handling = need?.handling ?? kinds[0]?.handling
  const name = words.needTile(code)
  const isLong = name.length > LONG || name.split(' ').some((word) => word.length > LONG_WORD)
  return (
    <button
      type="button"
      className={styles.tile}
      data-code={code}
      data-long={isLong || undefined}
      data-diet={isDiet(code) || undefined}
      data-handling={handling}
      aria-pressed={handling !== undefined}
      onClick={() => tap({ act: 'need', code })}
    >
      <strong>{name}</strong>
      {need && <small>{words.asked(code, need.handling, stays)}</small>}
      {kinds.length > 0 && <small>{kinds.map((one) => words.needTile(one.code)).join(', ')}</small>}
    </button>
  )
}
