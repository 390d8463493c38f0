import styles from '#components/assembly/foot.module.css'
import { type AssemblyWords, useAssemblyWords } from '#components/assembly/words.tsx'
import type { Room } from '#components/device/use-device.ts'
import type { AssemblyView } from '#lib/rooms/making/views/assembly.ts'
import type { InQueue, NowBuild } from '#lib/rooms/making/views/now-build.ts'
import { linesOfParts } from '#lib/service/mark.ts'
import { sayBuild } from '#lib/service/tickets.ts'

const QUEUE_SHOWN: Readonly<Record<Room, number>> = { phone: 3, small: 2, medium: 3, large: 4 }

/** A long mark is set smaller: letters over which, and how it is called in the styles. */
const LENGTHS = [
  [150, 'most'],
  [95, 'very'],
  [40, 'long'],
] as const

const lengthOf = (words: AssemblyWords, now: NowBuild): number =>
  words.markLines(now.mark).join(' ').length

/** A mark this long takes all the room there is. */
const isLongest = (words: AssemblyWords, now: NowBuild): boolean => lengthOf(words, now) > 95

/** What to write on the wrap. */
export function WrapMark({ now }: { readonly now: NowBuild }) {
  const words = useAssemblyWords()
  const lines = words.markLines(now.mark)
  const length = lengthOf(words, now)
  return (
    <section
      className={styles.card}
      data-long={LENGTHS.find(([over]) => length > over)?.[1] ?? 'no'}
    >
      <h2>{words.wrap}</h2>
      <p className={styles.wrap}>
        <b>{sayBuild(now.name)}</b>
        {lines.length === 0 && <small className={styles.asItComes}>{words.asItComes}</small>}
        {lines.map((line, index) => (
          <span key={line} data-apart={now.keepFrom.length > 0 && index >= linesOfParts(now.mark)}>
            {line}{' '}
          </span>
        ))}
      </p>
    </section>
  )
}

export function WarmCard({ view }: { readonly view: AssemblyView }) {
  const words = useAssemblyWords()
  if (view.warmNext.length === 0 || (view.now && isLongest(words, view.now))) return null
  return (
    <section className={styles.card}>
      <h2>{words.warmNext}</h2>
      {view.warmNext.map((one) => (
        <p key={one.component}>
          {words.warmThing(one.component, one.seconds, one.on)}
          <b className={styles.warmFor}>{one.builds.map(sayBuild).join(', ')}</b>
        </p>
      ))}
    </section>
  )
}

const noteOf = (words: AssemblyWords, one: InQueue): string =>
  [
    ...(one.state === 'making' ? [words.beingMade] : []),
    ...(one.held ? [words.isHeld] : []),
    ...(one.short ? [words.isShort] : []),
    ...(one.keptApart ? [words.keptApart] : []),
  ].join(', ') || one.item

/** The builds that follow; a tap shows one of them. */
export function QueueStrip({
  queue,
  room,
  onChoose,
}: {
  readonly queue: readonly InQueue[]
  readonly room: Room
  readonly onChoose: (name: string) => void
}) {
  const words = useAssemblyWords()
  const shown = QUEUE_SHOWN[room]
  const hidden = queue.length - shown
  return (
    <section className={styles.queue} aria-labelledby="queue-title">
      <h2 id="queue-title" className={styles.queueTitle}>
        {words.queue}
      </h2>
      {queue.length === 0 && <p className={styles.queueNone}>{words.queueNone}</p>}
      <ul>
        {queue.slice(0, shown).map((one) => (
          <li key={one.name}>
            <button
              type="button"
              data-state={one.state}
              data-apart={one.keptApart}
              data-short={one.short}
              data-held={one.held}
              aria-label={`${words.look(one.name)}, ${noteOf(words, one)}`}
              onClick={() => onChoose(one.name)}
            >
              <b>{sayBuild(one.name)}</b>
              <span>{noteOf(words, one)}</span>
            </button>
          </li>
        ))}
      </ul>
      {hidden > 0 && <p className={styles.queueMore}>{words.queueMore(hidden)}</p>}
    </section>
  )
}
