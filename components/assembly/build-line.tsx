import type { CSSProperties, ReactNode } from 'react'
import styles from '#components/assembly/build-line.module.css'
import { useAssemblyWords } from '#components/assembly/words.tsx'
import type { Room } from '#components/device/use-device.ts'
import { lidsOver, rowsOfWells } from '#lib/rooms/making/views/lids.ts'
import { componentOf } from '#lib/station/find.ts'
import type { Component, Pan, StationDocument, Well } from '#lib/station/station-document.ts'

/** How a pan stands: wide, wide and from behind, a little narrower, under a lid, a sliver under one, or a bare sliver. */
export type Stand = 'wide' | 'behind' | 'narrow' | 'shut' | 'slim' | 'sliver'

/** From so many neighbours on, names under a lid take turns on two heights. */
const TURNS_FROM = 3

/** What a row has room for, and what a letter of a name takes at most, CSS pixels. */
const ROW: Readonly<Record<Room, { readonly px: number; readonly letter: number }>> = {
  phone: { px: 374, letter: 11.6 },
  small: { px: 990, letter: 16.6 },
  medium: { px: 1_240, letter: 16.6 },
  large: { px: Number.POSITIVE_INFINITY, letter: 16.6 },
}

/** Borders and room beside a name, a sliver, what a count or a scoop takes at least, CSS pixels. */
const BESIDE_PX = 17
const SLIVER_PX = 33
const LEAST_PX = 96
const BEHIND_PX = 145
const TURNED_PX = 70

const leastOf = (stand: Stand, { short }: Component, letter: number): number =>
  stand === 'sliver' || stand === 'slim'
    ? SLIVER_PX
    : Math.max(
        stand === 'behind' ? BEHIND_PX : LEAST_PX,
        BESIDE_PX + letter * Math.max(...short.map((line) => line.length)),
      )

interface BuildLineProps {
  readonly station: StationDocument
  readonly label: string
  /** Each well on a row of its own, or as many as fit. */
  readonly byWell: boolean
  readonly room: Room
  readonly standOf: (pan: Pan) => Stand
  readonly renderPan: (pan: Pan, component: Component) => ReactNode
}

const TRACKS: Readonly<Record<Stand, string>> = {
  wide: 'minmax(min-content, 1.2fr)',
  behind: 'minmax(min-content, 1.2fr)',
  narrow: 'minmax(min-content, 1fr)',
  shut: 'minmax(min-content, 1fr)',
  slim: 'var(--sliver)',
  sliver: 'var(--sliver)',
}

interface Row {
  readonly columns: string
  /** Columns by pan, 1 and up, with the gaps between wells counted in. */
  readonly at: ReadonlyMap<string, number>
  readonly lids: readonly (readonly string[])[]
  readonly isFull: boolean
  /** Also once names take turns: signs take two lines. */
  readonly isFuller: boolean
  /** All are slivers. */
  readonly isBare: boolean
}

const rowOf = (
  { station, standOf, room }: Pick<BuildLineProps, 'station' | 'standOf' | 'room'>,
  wells: readonly Well[],
): Row => {
  const at = new Map<string, number>()
  const columns: string[] = []
  for (const well of wells) {
    if (columns.length > 0) columns.push('var(--between)')
    for (const pan of well.pans) {
      columns.push(TRACKS[standOf(pan)])
      at.set(pan.id, columns.length)
    }
  }
  const pans = wells.flatMap((well) => well.pans)
  const lids = lidsOver(pans, (pan) => standOf(pan) === 'shut' || standOf(pan) === 'slim')
  const { px, letter } = ROW[room]
  const least = (pan: Pan) => leastOf(standOf(pan), componentOf(station, pan.component), letter)
  const turning = new Set(lids.filter(({ length }) => length >= TURNS_FROM).flat())
  const sum = (of: (pan: Pan) => number) => pans.reduce((so, pan) => so + of(pan), 0)
  return {
    columns: columns.join(' '),
    at,
    lids,
    isFull: sum(least) > px,
    isFuller: sum((pan) => (turning.has(pan.id) ? TURNED_PX : least(pan))) > px,
    isBare: pans.every((pan) => standOf(pan) === 'sliver'),
  }
}

/** One lid over neighbours: its handle, and its words upright. What it says is said in each pan. */
function Lid({
  run,
  row,
  isSlim,
}: {
  readonly run: readonly string[]
  readonly row: Row
  readonly isSlim: boolean
}) {
  const words = useAssemblyWords()
  const from = row.at.get(run[0] ?? '') ?? 1
  const to = row.at.get(run.at(-1) ?? '') ?? from
  return (
    <li
      className={styles.over}
      aria-hidden="true"
      data-over={isSlim ? 'slim' : run.length === 1 ? 'one' : 'some'}
      style={{ '--columns-of-lid': `${from} / ${to + 1}` } as CSSProperties}
    >
      <span className={styles.handle} />
      <b className={styles.lid}>
        <span>{words.lid}</span>
      </b>
    </li>
  )
}

/** Where a name under a lid stands: names of many neighbours take turns, so that each has room. */
const turnOf = (row: Row, pan: Pan): 'upper' | 'lower' | undefined => {
  const run = row.lids.find((one) => one.includes(pan.id))
  if (!run || run.length < TURNS_FROM || !row.isFull) return undefined
  return run.indexOf(pan.id) % 2 === 0 ? 'upper' : 'lower'
}

/** The line in one row whose pans share their baselines, or by well; lids lie over neighbours. */
export function BuildLine({ station, label, byWell, room, standOf, renderPan }: BuildLineProps) {
  const lidOver = (run: readonly string[], row: Row, wells: readonly Well[]) => {
    const over = wells.flatMap((well) => well.pans).filter(({ id }) => run.includes(id))
    const isSlim = over.every((pan) => standOf(pan) === 'slim')
    return <Lid key={`lid ${run[0]}`} run={run} row={row} isSlim={isSlim} />
  }
  const rows = rowsOfWells(station, byWell).map((wells) => ({
    wells,
    row: rowOf({ station, standOf, room }, wells),
  }))
  return (
    <ol
      className={styles.line}
      aria-label={label}
      data-by-well={byWell}
      data-full={rows.some(({ row }) => row.isFull)}
      data-fuller={rows.some(({ row }) => row.isFuller)}
      style={byWell ? undefined : ({ '--columns': rows[0]?.row.columns } as CSSProperties)}
    >
      {rows.flatMap(({ wells, row }) => [
        ...wells.map((well) => {
          const first = row.at.get(well.pans[0]?.id ?? '') ?? 1
          const style = byWell
            ? { '--columns': row.columns, '--pans': well.pans.length }
            : { gridColumn: `${first} / span ${well.pans.length}` }
          return (
            <li
              key={well.id}
              className={styles.well}
              data-bare={byWell && row.isBare}
              style={style as CSSProperties}
            >
              <ol className={styles.pans}>
                {byWell && row.lids.map((run) => lidOver(run, row, wells))}
                {well.pans.map((pan, place) => {
                  const isLast = pan === wells.at(-1)?.pans.at(-1)
                  return (
                    <li
                      key={pan.id}
                      className={styles.place}
                      data-pan={pan.id}
                      data-stand={standOf(pan)}
                      data-turn={turnOf(row, pan)}
                      data-first={row.lids.some(([first]) => first === pan.id) || undefined}
                      data-end={isLast || undefined}
                      style={{ gridColumn: byWell ? row.at.get(pan.id) : place + 1 }}
                    >
                      {renderPan(pan, componentOf(station, pan.component))}
                    </li>
                  )
                })}
              </ol>
            </li>
          )
        }),
        ...(byWell ? [] : row.lids.map((run) => lidOver(run, row, wells))),
      ])}
    </ol>
  )
}
