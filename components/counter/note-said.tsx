import styles from '#components/counter/note-said.module.css'
import { sayNote } from '#components/counter/say-note.ts'
import { useCounterWords } from '#components/counter/words.tsx'
import type { Draft } from '#lib/rooms/orders/facts/draft.ts'
import { type BuildLacks, lacksTold } from '#lib/rooms/orders/views/lacks-told.ts'
import type { Note } from '#lib/rooms/orders/views/ordering.ts'
import { nameIn } from '#lib/station/name-in.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** What an order lacks, or null where its note is one sentence. */
export const lacksIn = (
  station: StationDocument,
  note: Note | null,
  drafts: readonly Draft[],
): readonly BuildLacks[] | null =>
  note?.kind === 'refused' ? lacksTold(station, note.refusal, drafts) : null

/** All that is lacking, build by build, with what to do about each. */
export function LacksList({
  station,
  builds,
}: {
  readonly station: StationDocument
  readonly builds: readonly BuildLacks[]
}) {
  const words = useCounterWords()
  const name = nameIn(station)
  return (
    <ul className={styles.builds}>
      {builds.map(({ letter, item, lacks }) => (
        <li key={letter}>
          <b>
            {letter} {item !== null && name(item)}
          </b>
          <ul>
            {lacks.map(({ lack, way }) => (
              <li key={`${lack.code} ${'component' in lack ? lack.component : lack.id}`}>
                {words.lacks.lack(lack, way, name, (at) => words.sayClock(at, station.timeZone))}
              </li>
            ))}
          </ul>
        </li>
      ))}
    </ul>
  )
}

/** Why a tap did nothing, or the order wasn't taken, and what to do. */
export function NoteSaid({
  station,
  note,
  drafts,
  className,
}: {
  readonly station: StationDocument
  readonly note: Note
  readonly drafts: readonly Draft[]
  readonly className: string | undefined
}) {
  const words = useCounterWords()
  const builds = lacksIn(station, note, drafts)
  return builds ? (
    <div className={className}>
      <LacksList station={station} builds={builds} />
    </div>
  ) : (
    <p className={className}>{sayNote(words, station, note)}</p>
  )
}
