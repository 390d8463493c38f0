import styles from '#components/hand-over/kept.module.css'
import type { Kept } from '#lib/views/hand-over.ts'
import { handOverEn as say } from '#lib/words/hand-over-en.ts'
import { sayWhyHeld } from '#lib/words/held-en.ts'

function Why({ kept, since }: { readonly kept: Kept; readonly since?: string }) {
  return (
    <>
      <h3>{kept.name}</h3>
      <p className={styles.item}>
        {kept.item}
        {since !== undefined && <small>{since}</small>}
      </p>
      <p className={styles.why}>{sayWhyHeld(kept.why)}</p>
    </>
  )
}

/** Guests who have food that may not be theirs to eat: before all else on the screen. */
export function ToFindList({
  toFind,
  now,
  onFound,
}: {
  readonly toFind: readonly Kept[]
  /** The server's time, epoch milliseconds. */
  readonly now: number
  readonly onFound: (kept: Kept) => void
}) {
  if (toFind.length === 0) return null
  return (
    <section className={styles.find} aria-labelledby="find-title">
      <h2 id="find-title">{say.toFind}</h2>
      <p>{say.toFindThen}</p>
      <ul>
        {toFind.map((kept) => (
          <li key={kept.name}>
            <Why kept={kept} since={say.handedOverAgo(now - kept.at)} />
            <button type="button" onClick={() => onFound(kept)}>
              {say.foundOf(kept.name)}
            </button>
          </li>
        ))}
      </ul>
    </section>
  )
}

/** Made builds that may not be given out: they stand apart until they are thrown out. */
export function HeldList({
  held,
  busy,
  onThrownOut,
}: {
  readonly held: readonly Kept[]
  readonly busy: boolean
  readonly onThrownOut: (kept: Kept) => void
}) {
  if (held.length === 0) return null
  return (
    <section className={styles.held} aria-labelledby="held-title">
      <h2 id="held-title">{say.held}</h2>
      {held.some(({ why }) => why.reason !== 'off-sale') && <p>{say.heldThen}</p>}
      <ul>
        {held.map((kept) => (
          <li key={kept.name} data-build={kept.name}>
            <Why kept={kept} />
            {kept.why.reason === 'off-sale' && <p>{say.heldDecide}</p>}
            <button type="button" disabled={busy} onClick={() => onThrownOut(kept)}>
              {say.threwOut(kept.name)}
            </button>
          </li>
        ))}
      </ul>
    </section>
  )
}
