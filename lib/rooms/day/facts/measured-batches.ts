/** What batches of services gave against what the house says of their loads. */
import { civilDate } from '#lib/measure/civil.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import type { RunningState } from '#lib/service/state.ts'
import { hashOf } from '#lib/service/state-hash.ts'
import { findComponent } from '#lib/station/find.ts'
import { cardTexts } from '#lib/tasting/card-of.ts'
import type { YieldSaved } from '#lib/tasting/yields.ts'

export interface BatchMeasured {
  /** What it gave over what its loads should have given, above 0. */
  readonly ratio: number
  /** Hash of all that its card said as the service was open. */
  readonly card: string
  /** Portions of a load, as the house said it then. */
  readonly load: number
}

/** Null where it was only thought to be as usual, and where nothing says what it should have given. */
export const measuredBatch = (state: RunningState, batch: BatchState): BatchMeasured | null => {
  const { station, standIns, portions } = state
  const { component, amount, loadsDone, finishedAt, lot } = batch
  const load = findComponent(station, component)?.remake?.portionsPerLoad
  const portion = standIns[component]?.usual ?? portions[component]
  const text = cardTexts(station)[component]
  if (batch.measured !== true || finishedAt === null || lot !== undefined) return null
  if (load === undefined || text === undefined || !portion || amount <= 0) return null
  const stated = loadsDone * load * portion.amount
  return stated > 0 ? { ratio: amount / stated, card: hashOf(text), load } : null
}

/** As much of a record as this needs. */
interface Recorded {
  readonly service: string
  readonly kind: string
  readonly station: string
  readonly batches: readonly {
    readonly component: string
    readonly finishedAt: number | null
    readonly measured?: BatchMeasured
  }[]
}

/** Of real services alone: a practice is nobody's usual day. */
export const yieldsOfServices = (
  records: readonly Recorded[],
  { id, timeZone }: { readonly id: string; readonly timeZone: string },
): readonly YieldSaved[] =>
  records
    .filter(({ kind, station }) => kind === 'real' && station === id)
    .flatMap(({ service, batches }) =>
      batches.flatMap(({ component, finishedAt, measured }, index): YieldSaved[] => {
        if (!measured || finishedAt === null) return []
        const on = civilDate(finishedAt, timeZone)
        // A record is written once, so that a batch of it keeps its place.
        const row = { id: `service/${service}/${index}`, component, on, ...measured, out: null }
        return [{ ...row, from: 'service', factor: null, typed: null }]
      }),
    )
