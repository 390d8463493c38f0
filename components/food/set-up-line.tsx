import { useEffect, useRef } from 'react'
import styles from '#components/food/set-up-line.module.css'
import type { SetUp } from '#components/food/use-set-up.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { Line } from '#components/line/line.tsx'
import { isAsked, type SetUpRow } from '#lib/rooms/pans/views/set-up-row.ts'
import type { RunningState } from '#lib/service/state.ts'
import { componentOf } from '#lib/station/find.ts'

interface SetUpLineProps {
  readonly state: RunningState
  readonly setUp: SetUp
  /** The pan that is spoken of; null: none. */
  readonly lit: string | null
  readonly onChoose: (pan: string) => void
}

/** How it stands: it holds food, goes with the next load, is asked about, or can't go in. */
const standingOf = ({ holds, wait }: SetUpRow): 'loaded' | 'ready' | 'asked' | 'not' =>
  holds !== null ? 'loaded' : wait === null ? 'ready' : isAsked(wait) ? 'asked' : 'not'

/** So full a pan is drawn that holds its usual portions, where what it can hold isn't known. */
const USUAL = 0.85

const levelOf = ({ holds, portions, usual, capacity }: SetUpRow): number =>
  Math.min(
    1,
    capacity === null ? ((holds ?? portions) / usual) * USUAL : (holds ?? portions) / capacity,
  )

/** The whole line as it will stand: a dashed surface is to go in, a full one is in. */
export function SetUpLine({ state, setUp, lit, onChoose }: SetUpLineProps) {
  const words = useFoodWords()
  const line = useRef<HTMLDivElement>(null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: another pan is lit, and comes in sight
  useEffect(() => {
    const to = line.current?.querySelector('[data-lit]')
    to?.scrollIntoView({ inline: 'center', block: 'nearest' })
  }, [lit])
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  const fromOf = ({ source, openedOn, isPack }: SetUpRow): readonly [string, string] => {
    const { from } = words.setUp
    if (source === null) return ['', '']
    if (source.kind === 'batch') return from.batch(time(source.finishedAt))
    if (source.kind === 'backup') return from.backup
    return isPack
      ? openedOn === null
        ? from.pack
        : from.opened(words.sayDate(openedOn))
      : from.dry
  }
  const readOf = (row: SetUpRow): readonly string[] => {
    const { reading } = row.load ?? {}
    if (row.holds !== null) return [words.setUp.loaded]
    if (row.wait) return [words.setUp.shortly(row.wait, isCup(row))]
    if (reading?.at !== undefined) return [words.sayDegrees(reading), `✓ ${time(reading.at)}`]
    return [row.heldBy === 'time' ? words.setUp.onClock : words.setUp.dry]
  }
  const isCup = ({ component }: SetUpRow): boolean =>
    componentOf(state.station, component).portion.tool === 'cup'
  return (
    <div ref={line} className={styles.line} data-swiped="">
      <Line
        station={state.station}
        label={words.line}
        className={styles.row ?? ''}
        renderPan={({ id }, component) => {
          const row = setUp.sheet.rows.find((one) => one.pan === id)
          if (!row) return null
          const standing = standingOf(row)
          const from = row.holds === null ? fromOf(row) : (['', ''] as const)
          const refused = setUp.of(id).refused !== null
          const read = refused ? [words.setUp.notTaken] : readOf(row)
          const count = row.holds ?? (row.source && row.wait?.why !== 'left' ? row.portions : null)
          return (
            <button
              type="button"
              className={styles.pan}
              data-notch={id}
              data-standing={standing}
              data-refused={refused || undefined}
              data-lit={lit === id || undefined}
              aria-expanded={lit === id}
              aria-label={words.setUp.pan(component.name, [
                count === null
                  ? words.notLoaded
                  : row.holds === null
                    ? words.setUp.goesIn(count)
                    : words.setUp.holds(count),
                ...[from.join(' '), ...read].filter((one) => one.trim() !== ''),
              ])}
              onClick={() => onChoose(id)}
            >
              <span className={styles.name}>
                {component.short.map((line) => (
                  <span key={line}>{line}</span>
                ))}
              </span>
              <span className={styles.vessel}>
                {count !== null && (
                  <span
                    className={styles.food}
                    style={{ height: `${Math.round(levelOf(row) * 100)}%` }}
                  />
                )}
                <b className={count === null ? styles.none : styles.number}>
                  {count ?? words.setUp.none}
                </b>
              </span>
              <span className={styles.from}>
                <span>{from[0]}</span>
                <b>{from[1]}</b>
              </span>
              <span className={styles.read}>
                {read.map((one) => (
                  <b key={one}>{one}</b>
                ))}
              </span>
            </button>
          )
        }}
      />
    </div>
  )
}
