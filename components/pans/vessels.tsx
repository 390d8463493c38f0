import type { Choose } from '#components/job/chosen.ts'
import styles from '#components/pans/vessels.module.css'
import { usePansWords } from '#components/pans/words.tsx'
import { isWide, type VesselPicture } from '#lib/rooms/food/views/vessels.ts'
import { componentOf } from '#lib/station/find.ts'
import type { Component, StationDocument } from '#lib/station/station-document.ts'

interface VesselsProps {
  /** What the pan before them holds. */
  readonly behind: Component
  readonly station: StationDocument
  readonly vessels: readonly VesselPicture[]
  /** The one that something is done to. */
  readonly lit: string | null
  readonly time: (at: number) => string
  /** By id: what it says instead, while a round of readings is taken. */
  readonly marks: Readonly<Record<string, string>>
  readonly choose: Choose
}

/** So many are drawn behind one pan; the others are counted. */
const MOST = 4

/** Back-up pans with their lids and batches as pots, in a row behind their pan. */
export function Vessels({ behind, station, vessels, lit, time, marks, choose }: VesselsProps) {
  const words = usePansWords()
  const shown = ({ id, stage, portions, at, isLate, batch }: VesselPicture): readonly string[] => {
    const mark = marks[id]
    if (mark !== undefined) return [mark]
    switch (stage) {
      case 'throw-out':
      case 'off-sale':
        return words.onLine.bad[stage]
      case 'due':
        return [
          batch?.stage === 'to-cool' ? words.onLine.coolBy : words.onLine.read,
          ...(at === null ? [] : [time(at)]),
        ]
      case 'ready':
        return [String(portions ?? '')]
      case 'under-way':
        if (batch && batch.coolAt !== null) return [words.onLine.coolBy, time(batch.coolAt)]
        if (batch?.stage === 'cooked') return [words.onLine.cooked]
        if (batch?.stage === 'cooling') return [words.onLine.read]
        if (at === null) return [words.onLine.making]
        return isLate ? [words.onLine.isDone] : [words.onLine.till, time(at)]
      case 'empty':
        return []
    }
  }
  const drawn = vessels.length > MOST ? vessels.slice(0, MOST - 1) : vessels
  return (
    <div className={styles.behind}>
      {drawn.map((one) => {
        const { what, id, kind, stage, batch, component } = one
        const { name, short } = componentOf(station, component)
        // Of food that stands in no pan: nothing but its name says what it is.
        const isOther = component !== behind.id
        const says = isOther ? [short.join(' '), ...shown(one).slice(0, 1)] : shown(one)
        return (
          <button
            key={`${what} ${id}`}
            type="button"
            className={styles.vessel}
            data-kind={kind}
            data-stage={stage}
            data-cools={
              (batch && (batch.coolAt !== null || batch.stage === 'cooling')) || undefined
            }
            data-wide={isWide(one) || undefined}
            data-other={isOther || undefined}
            data-lit={lit === id || undefined}
            data-vessel={id}
            aria-label={`${name} ${batch ? words.batches.stage(batch, time) : words.onLine.vessel(one, shown(one).join(' '))}`}
            onClick={() =>
              choose(
                batch
                  ? batch.stage === 'to-read'
                    ? { task: 'read', what: 'batch', id }
                    : { task: 'batch', id }
                  : stage === 'empty'
                    ? { task: 'fill-backup', id }
                    : { task: 'behind', component },
              )
            }
          >
            <span className={styles.body}>
              {says.map((word) => (
                <b key={word} data-long={word.length > 3 || undefined}>
                  {word}
                </b>
              ))}
            </span>
          </button>
        )
      })}
      {drawn.length < vessels.length && (
        <button
          type="button"
          className={styles.more}
          aria-label={words.onLine.moreBehind(behind.name, vessels.length - drawn.length)}
          onClick={() => choose({ task: 'behind', component: vessels.at(-1)?.component ?? null })}
        >
          {words.onLine.more(vessels.length - drawn.length)}
        </button>
      )}
    </div>
  )
}
