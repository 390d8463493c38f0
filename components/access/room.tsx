import type { ReactNode } from 'react'
import styles from '#components/access/room.module.css'
import { useAccessWords } from '#components/access/words.tsx'
import { PLACES } from '#lib/access/at-places.ts'
import type { LineDrawn } from '#lib/access/http.ts'
import type { Role } from '#lib/service/roles.ts'

/** Pans in each well where no station is known yet: a drawing, not a line that is there. */
const ANY_LINE: readonly number[] = [2, 3, 3, 2]

/** The line with its pans bare, and the shelf at its right end. */
function BareLine({ wells }: { readonly wells: readonly number[] }) {
  return (
    <div className={styles.line} aria-hidden="true">
      {wells.map((pans, well) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: wells are told by their place alone
        <span key={well} className={styles.well} data-pans={pans}>
          {Array.from({ length: pans }, (_, pan) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: pans are told by their place alone
            <i key={pan} />
          ))}
        </span>
      ))}
      <span className={styles.shelf} />
    </div>
  )
}

interface RoomProps {
  /** Dashed while nobody made it. */
  readonly is: 'missing' | 'made'
  readonly door: 'open' | 'shut'
  /** What is done below it needs the height. */
  readonly isSmall?: boolean
  readonly label?: string
  /** The station's own, where it is known. */
  readonly line?: LineDrawn | null | undefined
  readonly place: (role: Role) => ReactNode
}

/** The house: a roof over the line, a door in its wall, and a place for each who works at it. */
export function Room({ is, door, isSmall, label, line, place }: RoomProps) {
  const words = useAccessWords()
  return (
    <section
      className={styles.house}
      data-is={is}
      data-small={isSmall || undefined}
      aria-label={label ?? words.room}
    >
      <svg
        className={styles.roof}
        viewBox="0 0 100 12"
        preserveAspectRatio="none"
        aria-hidden="true"
      >
        <path d="M0.5 12 L50 1 L99.5 12" vectorEffect="non-scaling-stroke" />
      </svg>
      <div className={styles.walls}>
        <span className={styles.door} data-is={door} aria-hidden="true" />
        <BareLine wells={line?.wells ?? ANY_LINE} />
        {PLACES.map((role) => (
          <div key={role} className={styles.at} data-at={role} data-notch={role}>
            {place(role)}
          </div>
        ))}
      </div>
    </section>
  )
}

/** What stands at a place: nothing that is let in, something, or what isn't this device's. */
export type PlaceIs = 'empty' | 'taken' | 'shut'

/** A place's own drawing: its name, what is done there, and the tablets that are at it. */
export function Place({
  role,
  is,
  what,
  children,
}: {
  readonly role: Role
  readonly is: PlaceIs
  readonly what?: string | undefined
  readonly children?: ReactNode
}) {
  const words = useAccessWords()
  return (
    <span className={styles.place} data-is={is}>
      <b>{words.place[role]}</b>
      {what !== undefined && <span className={styles.what}>{what}</span>}
      {children}
    </span>
  )
}

/** A tablet where it is, with its name on it: dashed while it isn't there. */
export function Slab({
  name,
  is,
}: {
  readonly name: string
  readonly is: 'here' | 'away' | 'missing'
}) {
  return (
    <span className={styles.slab} data-is={is}>
      {name}
    </span>
  )
}
