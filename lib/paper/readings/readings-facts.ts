/** What is read while a planned service is open, for a log by hand: pans, what stands behind them, sanitizer. */
import { limitOf, setUpFacts } from '#lib/paper/set-up/set-up-facts.ts'
import type { TemperatureLimit } from '#lib/safety/limits.ts'
import { MINUTE_MS } from '#lib/safety/limits.ts'
import type { ServicePlan } from '#lib/service/events/plan-event.ts'
import { componentOf } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

export type ReadingRow = { readonly id: string } & (
  | {
      readonly what: 'pan'
      /** As the set-up sheet counts it. */
      readonly number: number
      readonly name: string
      readonly limit: TemperatureLimit
    }
  /** By time alone: its hour is read, not its temperature. */
  | { readonly what: 'time'; readonly number: number; readonly name: string }
  | { readonly what: 'backup'; readonly name: string; readonly limit: TemperatureLimit }
  | { readonly what: 'sanitizer' }
  /** Written in by hand. */
  | { readonly what: 'other' }
)

export interface ReadingsFacts {
  readonly rows: readonly ReadingRow[]
  /** By when each round is taken, epoch milliseconds; null of spare ones, so that no page has room left. */
  readonly rounds: readonly (number | null)[]
}

/** Rounds that stand beside one another on paper. */
const BESIDE = 3
/** A longer day has a second sheet. */
const MOST_ROUNDS = 12
/** For a batch that is cooked, cooled or heated meanwhile. */
const OTHERS = 3

const roundsOf = (
  { opensAt, closesAt }: Pick<ServicePlan, 'opensAt' | 'closesAt'>,
  everyMin: number,
): readonly (number | null)[] => {
  const every = everyMin * MINUTE_MS
  const count = Math.ceil(Math.max(1, closesAt - opensAt) / every)
  const due = Math.min(MOST_ROUNDS, count)
  return Array.from({ length: Math.ceil(due / BESIDE) * BESIDE }, (_, at) =>
    at < due ? Math.min(closesAt, opensAt + (at + 1) * every) : null,
  )
}

/** In line order; dry food isn't read and has no row. */
export const readingsFacts = (
  station: StationDocument,
  plan: Pick<ServicePlan, 'opensAt' | 'closesAt'>,
): ReadingsFacts => {
  const pans = setUpFacts(station).wells.flatMap((well) => well.pans)
  const ofPans = pans.flatMap((pan): readonly ReadingRow[] => {
    const { number, name, limit } = pan
    const id = `pan-${pan.pan}`
    if (pan.within !== null) return [{ id, what: 'time', number, name }]
    return limit === null ? [] : [{ id, what: 'pan', number, name, limit }]
  })
  const behind = station.backups.flatMap(({ id, component, kept }): readonly ReadingRow[] => {
    const { name, food } = componentOf(station, component)
    const limit = kept === 'boxed' ? null : limitOf(station, { held: kept }, { held: kept, food })
    return limit === null ? [] : [{ id: `backup-${id}`, what: 'backup', name, limit }]
  })
  return {
    rows: [
      ...ofPans,
      ...behind,
      { id: 'sanitizer', what: 'sanitizer' },
      ...Array.from(
        { length: OTHERS },
        (_, at): ReadingRow => ({ id: `other-${at + 1}`, what: 'other' }),
      ),
    ],
    rounds: roundsOf(plan, station.safety.readings.everyMin),
  }
}
