import styles from '#components/hand-over/hand-over.module.css'
import { useHandOverWords } from '#components/hand-over/words.tsx'
import type { Coming, HandedOver } from '#lib/rooms/shelf/views/hand-over.ts'
import { sayBuild } from '#lib/service/tickets.ts'

/** What comes to the shelf next. */
export function ComingLine({ coming }: { readonly coming: readonly Coming[] }) {
  const words = useHandOverWords()
  const making = coming.filter((one) => one.state === 'making')
  const waiting = coming.length - making.length
  return (
    <p className={styles.coming}>
      <b>{words.coming}</b>
      {coming.length === 0 && <span>{words.nothingComing}</span>}
      {making.length > 0 && (
        <span>
          {making.map((one) => sayBuild(one.name)).join(', ')} {words.comingMaking}
        </span>
      )}
      {waiting > 0 && <span>{words.comingWaiting(waiting)}</span>}
    </p>
  )
}

/** What was handed over last, with a way back; folded where the shelf needs the room. */
export function Recent({
  isFolded,
  recent,
  count,
  now,
  onWrong,
}: {
  readonly isFolded: boolean
  readonly recent: readonly HandedOver[]
  readonly count: number
  readonly now: number
  readonly onWrong: (name: string) => void
}) {
  const words = useHandOverWords()
  if (recent.length === 0) return null
  const title = (
    <h2 id="recent-title">
      {words.recent} <small>{words.recentCount(count)}</small>
    </h2>
  )
  const list = (
    <ul>
      {recent.map((one) => (
        <li key={one.name}>
          <b>{sayBuild(one.name)}</b>
          <span>{one.item}</span>
          <small>{words.ago(now - one.at)}</small>
          <button
            type="button"
            className={styles.wrong}
            aria-label={words.wrongOf(one.name)}
            onClick={() => onWrong(one.name)}
          >
            {words.wrong}
          </button>
        </li>
      ))}
    </ul>
  )
  return isFolded ? (
    <details className={styles.recent}>
      <summary>{title}</summary>
      {list}
    </details>
  ) : (
    <section className={styles.recent} aria-labelledby="recent-title">
      {title}
      {list}
    </section>
  )
}
