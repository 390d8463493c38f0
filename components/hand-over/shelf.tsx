import { type CSSProperties, useEffect, useRef } from 'react'
import { Parcel } from '#components/hand-over/parcel.tsx'
import styles from '#components/hand-over/shelf.module.css'
import { COLUMNS } from '#components/hand-over/use-places.ts'
import { useHandOverWords } from '#components/hand-over/words.tsx'
import { Wrap, WrapNumber } from '#components/line/wrap.tsx'
import type { OnShelf } from '#lib/rooms/shelf/views/hand-over.ts'
import { boardsOf, type Place, type Places } from '#lib/rooms/shelf/views/places.ts'
import type { Stand } from '#lib/rooms/shelf/views/stands.ts'
import { sayBuild } from '#lib/service/tickets.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

const at = ({ row, column }: Place, span = 1): CSSProperties => ({
  gridRow: row + 1,
  gridColumn: `${column + 1} / span ${span}`,
})

/** From so many boards on a wrap has one line for what differs. */
const CROWDED = 3
/** More of them are slid past. */
export const IN_SIGHT = 4

interface Tray {
  readonly key: string
  readonly place: Place
  readonly span: number
  readonly ticket: number
}

/** Stretches of a ticket's places that lie side by side: one tray each. */
const traysOf = (stands: readonly Stand[], places: Places): readonly Tray[] =>
  stands
    .filter(({ onTray, atEnd }) => onTray && !atEnd)
    .flatMap(({ names, ticket }) => {
      const trays: Tray[] = []
      for (const name of names) {
        const place = places[name]
        if (!place) continue
        const last = trays.at(-1)
        if (last && last.place.row === place.row && last.place.column + last.span === place.column)
          trays[trays.length - 1] = { ...last, span: last.span + 1 }
        else trays.push({ key: name, place, span: 1, ticket })
      }
      return trays
    })

/** The shelf as it stands: boards with wraps on them, one ticket on one tray. */
export function Shelf({
  shelf,
  stands,
  missing,
  gone,
  places,
  columns,
  isPhone,
  station,
  guestOf,
  collectBy,
  chosen,
  isBare,
  onPick,
}: {
  readonly shelf: readonly OnShelf[]
  readonly stands: readonly Stand[]
  readonly missing: readonly string[]
  /** What was handed over a moment ago, and still has its place. */
  readonly gone: string | null
  readonly places: Places
  readonly columns: number
  readonly isPhone: boolean
  readonly station: StationDocument
  readonly guestOf: (build: OnShelf) => string | null
  /** Said of what stands there too long. */
  readonly collectBy: (build: OnShelf, isShort: boolean) => string | null
  readonly chosen: string | null
  readonly isBare: boolean
  readonly onPick: (name: string) => void
}) {
  const words = useHandOverWords()
  const boards = Math.max(1, boardsOf(places))
  const rows = Array.from({ length: boards }, (_, row) => row)
  const here = Object.entries(places).sort(
    ([, one], [, other]) => one.row - other.row || one.column - other.column,
  )
  const trays = traysOf(stands, places)
  // On a phone, and beside what comes before all else, wraps are as low as on more boards.
  const isBeside = !isPhone && columns < COLUMNS
  const crowd = isPhone ? Math.max(CROWDED, boards) : isBeside ? boards + 1 : boards
  const list = useRef<HTMLUListElement>(null)
  useEffect(() => {
    if (chosen === null) return
    const wrap = list.current?.querySelector(`[data-build="${CSS.escape(chosen)}"]`)
    wrap?.scrollIntoView({ block: 'nearest' })
  }, [chosen])
  const onTray = (name: string) =>
    trays.some(({ ticket }) =>
      stands.some((one) => one.ticket === ticket && one.names.includes(name)),
    )
  const guestOn = (ticket: number) => {
    const build = shelf.find((one) => one.ticket === ticket)
    return build && !isBare ? guestOf(build) : null
  }
  return (
    <ul
      ref={list}
      className={styles.shelf}
      aria-label={words.shelf}
      data-boards={Math.min(crowd, IN_SIGHT + 1)}
      style={{ '--columns': columns, '--boards': boards } as CSSProperties}
    >
      {rows.map((row) => {
        const end = here.find(([, place]) => place.row === row && place.atEnd)
        return (
          <li
            key={row}
            className={styles.board}
            aria-hidden="true"
            style={{ gridRow: row + 1, gridColumn: `1 / ${end ? end[1].column + 1 : -1}` }}
          />
        )
      })}
      {here.map(([name, place]) => {
        const build = shelf.find((one) => one.name === name)
        if (!build)
          return (
            <li key={name} className={styles.place} style={at(place)} data-tray={onTray(name)}>
              {missing.includes(name) && (
                <Wrap is="missing">
                  <WrapNumber said={sayBuild(name)} />
                  <span className={styles.differs}>{words.isMissing}</span>
                </Wrap>
              )}
              {name === gone && <span className={styles.gone}>{words.isGone}</span>}
            </li>
          )
        const late = place.atEnd ? collectBy(build, boards >= CROWDED) : null
        const guest = onTray(name) && crowd < CROWDED ? null : isBare ? null : guestOf(build)
        return (
          <li
            key={name}
            className={styles.place}
            style={at(place)}
            data-build={name}
            data-tray={onTray(name)}
            data-end={place.atEnd ? (build.askFirst ? 'apart' : 'long') : undefined}
          >
            <Parcel
              build={build}
              station={station}
              boards={isPhone ? Math.min(crowd, CROWDED) : crowd}
              isPhone={isPhone}
              isChosen={name === chosen}
              isBare={isBare}
              late={build.askFirst || isBare ? null : late}
              onPick={() => onPick(name)}
            />
            <span className={styles.ledge}>{guest}</span>
          </li>
        )
      })}
      {trays.map(({ key, place, span, ticket }) => (
        <li key={`tray ${key}`} className={styles.tray} style={at(place, span)}>
          {crowd < CROWDED && guestOn(ticket)}
        </li>
      ))}
    </ul>
  )
}
