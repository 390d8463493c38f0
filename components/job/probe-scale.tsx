import styles from '#components/job/probe-scale.module.css'
import { useFoodWords } from '#components/job/use-food-words.ts'
import type { ReadingForm } from '#components/job/use-reading.ts'
import {
  type ProbeScale as Drawn,
  probeScaleOf,
  shareOf,
} from '#lib/rooms/food/views/probe-scale.ts'

interface ProbeScaleProps {
  readonly drawn: Drawn
  /** Tenths of a degree on that scale; null while nothing sensible is typed. */
  readonly read: number | null
  readonly isMet: boolean
}

const percent = (share: number): string => `${Math.round(share * 1000) / 10}%`

/** A probe's scale with its limits marked, and what is read on it; all of it is said elsewhere too. */
export function ProbeScale({ drawn, read, isMet }: ProbeScaleProps) {
  const words = useFoodWords()
  const at = (tenths: number) => percent(shareOf(drawn, tenths))
  return (
    <div className={styles.scale} aria-hidden="true">
      <div className={styles.tube}>
        {read !== null && <span className={styles.filled} style={{ height: at(read) }} />}
      </div>
      {drawn.ticks.map((tenths) => (
        <span key={tenths} className={styles.tick} style={{ bottom: at(tenths) }}>
          {tenths / 10}
        </span>
      ))}
      {drawn.zones.map(({ from, to, kind, by }) => (
        <span
          key={from}
          className={styles.zone}
          data-kind={kind}
          style={{ bottom: at(from), height: percent(shareOf(drawn, to) - shareOf(drawn, from)) }}
        >
          <b>{words.readings.zone[kind]}</b>
          {by !== null && <small>{by}</small>}
        </span>
      ))}
      {drawn.limits.map((tenths) => (
        <span key={tenths} className={styles.limit} style={{ bottom: at(tenths) }}>
          <b>{tenths / 10}</b>
        </span>
      ))}
      {read !== null && (
        <span className={styles.read} data-met={isMet} style={{ bottom: at(read) }} />
      )}
    </div>
  )
}

/** Of a reading as it is typed; nothing is drawn where there is no limit to read it against. */
export function ReadingScale({ form }: { readonly form: ReadingForm }) {
  const { entry, judged, limit } = form
  if (!limit) return null
  return (
    <ProbeScale
      drawn={probeScaleOf(limit, entry.scale)}
      read={judged.question ? null : (judged.temperature?.tenths ?? null)}
      isMet={judged.verdict === 'met'}
    />
  )
}
