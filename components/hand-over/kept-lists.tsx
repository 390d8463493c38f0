import styles from '#components/hand-over/kept.module.css'
import { PastList } from '#components/hand-over/past-list.tsx'
import { useHandOverWords } from '#components/hand-over/words.tsx'
import type { HandOverView, Kept, PastBuild } from '#lib/rooms/shelf/views/hand-over.ts'
import { sayBuild } from '#lib/service/tickets.ts'

function Why({ kept, since }: { readonly kept: Kept; readonly since?: string }) {
  const words = useHandOverWords()
  return (
    <>
      <h3>{sayBuild(kept.name)}</h3>
      <p className={styles.item}>
        {kept.item}
        {since !== undefined && <small>{since}</small>}
      </p>
      <p className={styles.why}>{words.sayWhyHeld(kept.why)}</p>
    </>
  )
}

/** Guests who have food that may not be theirs to eat: before all else on the screen. */
function ToFindList({
  toFind,
  now,
  onFound,
}: {
  readonly toFind: readonly Kept[]
  /** The server's time, epoch milliseconds. */
  readonly now: number
  readonly onFound: (kept: Kept) => void
}) {
  const words = useHandOverWords()
  if (toFind.length === 0) return null
  return (
    <section className={styles.find} aria-labelledby="find-title">
      <h2 id="find-title">{words.toFind}</h2>
      <p>{words.toFindThen}</p>
      <ul>
        {toFind.map((kept) => (
          <li key={kept.name}>
            <Why kept={kept} since={words.handedOverAgo(now - kept.at)} />
            <button type="button" onClick={() => onFound(kept)}>
              {words.foundOf(kept.name)}
            </button>
          </li>
        ))}
      </ul>
    </section>
  )
}

/** Made builds that may not be given out: they stand apart until they are thrown out. */
function HeldList({
  held,
  busy,
  onThrownOut,
}: {
  readonly held: readonly Kept[]
  readonly busy: boolean
  readonly onThrownOut: (kept: Kept) => void
}) {
  const words = useHandOverWords()
  if (held.length === 0) return null
  return (
    <section className={styles.held} aria-labelledby="held-title">
      <h2 id="held-title">{words.held}</h2>
      {held.some(({ why }) => why.reason !== 'off-sale') && <p>{words.heldThen}</p>}
      <ul>
        {held.map((kept) => (
          <li key={kept.name} data-build={kept.name}>
            <Why kept={kept} />
            {kept.why.reason === 'off-sale' && <p>{words.heldDecide}</p>}
            <button type="button" disabled={busy} onClick={() => onThrownOut(kept)}>
              {words.threwOut(kept.name)}
            </button>
          </li>
        ))}
      </ul>
    </section>
  )
}

/** What comes before the shelf: guests to be found, and what may not be given out. */
export function FirstOfAll({
  view,
  timeZone,
  now,
  busy,
  onFound,
  onPast,
  onHeld,
}: {
  readonly view: HandOverView
  readonly timeZone: string
  readonly now: number
  readonly busy: boolean
  readonly onFound: (kept: Kept) => void
  readonly onPast: (past: PastBuild, initials: string) => void
  readonly onHeld: (kept: Kept) => void
}) {
  return (
    <div className={styles.first}>
      <ToFindList toFind={view.toFind} now={now} onFound={onFound} />
      <PastList past={view.toThrowOut} timeZone={timeZone} busy={busy} onThrownOut={onPast} />
      <HeldList held={view.held} busy={busy} onThrownOut={onHeld} />
    </div>
  )
}
