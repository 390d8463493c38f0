import styles from '#components/line/small-line.module.css'
import type { StationDocument } from '#lib/station/station-document.ts'

/** What a pan is to the build that the line is drawn for. */
export type InSmall = 'usual' | 'not' | 'no' | 'added' | 'extra' | 'side'

const SIGN: Readonly<Partial<Record<InSmall, string>>> = { added: '+', extra: '+', side: '●' }

/**
 * The line as small as it is still the line: a stroke a pan, in its wells. What it says is said in
 * words beside it.
 */
export function SmallLine({
  station,
  pans,
}: {
  readonly station: StationDocument
  /** By pan; one that isn't named isn't taken. */
  readonly pans: ReadonlyMap<string, InSmall>
}) {
  return (
    <span className={styles.line} aria-hidden="true">
      {station.line.wells.map((well) => (
        <span key={well.id} className={styles.well} style={{ flexGrow: well.pans.length }}>
          {well.pans.map(({ id }) => {
            const is = pans.get(id) ?? 'not'
            return <i key={id} data-is={is} data-sign={SIGN[is]} />
          })}
        </span>
      ))}
    </span>
  )
}
