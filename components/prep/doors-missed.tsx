import styles from '#components/prep/doors-missed.module.css'
import type { DoorsMissed } from '#lib/rooms/prep/facts/doors-missed.ts'
import { nameIn } from '#lib/station/name-in.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** What is said of it; each screen has it among its own words. */
interface MissedWords {
  readonly sayTime: (at: number, timeZone: string) => string
  readonly missesDoors: (
    name: string,
    missed: DoorsMissed,
    clocks: { readonly ready: string; readonly doors: string },
  ) => string
  readonly alsoMiss: (
    others: readonly { readonly name: string; readonly ready: string }[],
    more: number,
  ) => string
}

/** Others that are named beside the last one; all of them would be one long line that nobody reads. */
const NAMED = 3

/** Which food isn't on the line as the doors open: the last one in full, others by their time. */
export function MissedDoors({
  missed,
  station,
  opensAt,
  words,
  isOnPans,
}: {
  /** The last one first. */
  readonly missed: readonly DoorsMissed[]
  readonly station: StationDocument
  /** Epoch milliseconds. */
  readonly opensAt: number
  readonly words: MissedWords
  /** Their pans say when they are ready, so that others are counted here. */
  readonly isOnPans?: true
}) {
  const [last, ...others] = missed
  if (!last) return null
  const name = nameIn(station)
  const time = (at: number) => words.sayTime(at, station.timeZone)
  const clocks = { ready: time(last.readyAt), doors: time(opensAt) }
  const named = isOnPans ? [] : others.slice(0, NAMED)
  return (
    <p role="alert" className={styles.missed}>
      <b>{words.missesDoors(name(last.component), last, clocks)}</b>
      {others.length > 0 && (
        <span>
          {' '}
          {words.alsoMiss(
            named.map((one) => ({ name: name(one.component), ready: time(one.readyAt) })),
            others.length - named.length,
          )}
        </span>
      )}
    </p>
  )
}
