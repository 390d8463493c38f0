import styles from '#components/assembly/foot.module.css'
import { type AssemblyWords, useAssemblyWords } from '#components/assembly/words.tsx'
import type { Room } from '#components/device/use-device.ts'
import type { AssemblyView } from '#lib/rooms/making/views/assembly.ts'
import type { InQueue, NowBuild } from '#lib/rooms/making/views/now-build.ts'
import { linesOfParts } from '#lib/service/mark.ts'
import { sayBuild } from '#lib/service/tickets.ts'

const QUEUE_SHOWN: Readonly<Record<Room, number>> = { phone: 1, small: 2, medium: 3, large: 4 }

/** A mark of more letters takes all the room that there is; one of yet more is set smaller. */
const LONG_MARK = 36
const LONGEST_MARK = 110

const lettersOf = (words: AssemblyWords, now: NowBuild): number =>
  words.markLines(now.mark).join(' ').length

/** What to write on the wrap. */
export function WrapMark({ now }: { readonly now: NowBuild }) {
  const words = useAssemblyWords()
  const lines = words.markLines(now.mark)
  return (
    <section className={styles.card} data-long={lettersOf(words, now) > LONGEST_MARK}>
      <h2>{words.wrap}</h2>
      <p className={styles.wrap}>
        <b>{sayBuild(now.name)}</b>
        {lines.length === 0 && <small>{words.asItComes}</small>}
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
  if (view.warmNext.length === 0 || (view.now && lettersOf(words, view.now) > LONG_MARK))
    return null
  return (
    <section className={styles.card} data-second="">
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
    ...(one.elsewhere !== null
      ? [words.madeAt(one.elsewhere)]
      : one.state === 'making'
        ? [words.beingMade]
        : []),
    ...(one.held ? [words.isHeld] : []),
    ...(one.short ? [words.isShort] : []),
    ...(one.keptApart ? [words.keptApart] : []),
  ].join(', ') || one.item

/** The builds that follow, and those made at another screen; a tap shows one of them. */
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
