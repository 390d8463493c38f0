/**
 * What stays of a service when its events are deleted: the only history that forecasts and par read.
 * No ticket numbers, no needs, no names.
 */

import { biasRange } from '#lib/estimate/scoop-bias.ts'
import type { ServiceCounts } from '#lib/estimate/service-counts.ts'
import type { BuildTimes } from '#lib/estimate/wait.ts'
import { type BatchMeasured, measuredBatch } from '#lib/rooms/day/facts/measured-batches.ts'
import type { Temperature } from '#lib/safety/temperature.ts'
import { leftOfBatch } from '#lib/service/batch-loads.ts'
import type { EndedFood } from '#lib/service/events/end-event.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import type { Place } from '#lib/service/events/food-event.ts'
import type { ServiceKind } from '#lib/service/events/plan-event.ts'
import type { KnownBias } from '#lib/service/events/stock-event.ts'
import { minuteAt } from '#lib/service/minute.ts'
import { componentAt } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { WastedFor } from '#lib/service/stock-state.ts'
import { pansOf } from '#lib/station/find.ts'
import type { Portion } from '#lib/station/portion.ts'

export interface ComponentRecord {
  readonly portion: Portion
  /** Amounts in the component's unit. */
  readonly loaded: number
  readonly used: number
  readonly wasted: number
  /** Of what was wasted, what a reason was told of. */
  readonly wastedFor: WastedFor
  readonly corrected: number
  readonly takenAway: number
  /** Set aside for another service; left away where nothing was. */
  readonly setAside?: number
  /** What was left at close: in its pans, in back-up pans, and of batches that were never loaded. */
  readonly left: number
}

export interface BatchRecorded {
  readonly component: string
  readonly loads: number
  readonly startedAt: number
  readonly finishedAt: number | null
  readonly amount: number
  /** Left away where nobody weighed or counted it, and of what has no card or isn't made by loads. */
  readonly measured?: BatchMeasured
}

export interface ReadingRecorded {
  /** What was read: while cooking, cooling or reheating, or of a pan or back-up pan. */
  readonly of: 'cooking' | 'cooling' | 'reheating' | 'pan' | 'backup' | 'batch' | 'time-start'
  readonly component: string
  readonly at: number
  readonly temperature: Temperature
  /** Null where no limit is asked of it. */
  readonly met: boolean | null
}

export interface ServiceRecord {
  readonly format: 'level-scoop/service-record'
  readonly version: 1
  readonly service: string
  readonly station: string
  readonly kind: ServiceKind
  /** Of the station's document. */
  readonly revision: number
  /** When its doors were to open, where it was planned and never opened. */
  readonly openedAt: number
  readonly closedAt: number
  readonly counts: ServiceCounts
  /** It ended well before it was to: what didn't come isn't what nobody wanted. */
  readonly cutShort?: true
  readonly made: number
  readonly components: Readonly<Record<string, ComponentRecord>>
  readonly bias: Readonly<Record<string, KnownBias>>
  readonly batches: readonly BatchRecorded[]
  readonly readings: readonly ReadingRecorded[]
  readonly buildTimes: BuildTimes
  /** Its plan was dropped: it teaches nothing. */
  readonly neverOpened?: true
  /** How often the sanitizing solution was read, and was out of its limit; left away: nobody asked. */
  readonly sanitizer?: { readonly read: number; readonly out: number }
  /** What pans, back-up pans and batches came to as it ended; left away where nobody said. */
  readonly ends?: readonly Omit<EndedFood, 'id' | 'at'>[]
}

/** A bias that is known no better than this isn't known. */
const KNOWN_SD = 0.08

const biases = (state: RunningState): Readonly<Record<string, KnownBias>> =>
  Object.fromEntries(
    Object.entries(state.beliefs).flatMap(([id, belief]): [string, KnownBias][] => {
      const own = state.standIns[id]?.ownBias
      if (own) return own.sd > 0 && own.sd < KNOWN_SD ? [[id, own]] : []
      const sd = Math.sqrt(belief.biasVar)
      return sd > 0 && sd < KNOWN_SD ? [[id, { bias: biasRange(belief).bias, sd }]] : []
    }),
  )

const componentRecord = (state: RunningState, id: string): ComponentRecord | null => {
  const account = state.accounts[id]
  const portion = state.standIns[id]?.usual ?? state.portions[id]
  if (!account || !portion) return null
  const { loaded, used, wasted, corrected, takenAway, setAside } = account
  const left = [
    ...pansOf(state.station).map((pan) =>
      pan.component === id ? (state.pans[pan.id]?.amount ?? 0) : 0,
    ),
    ...Object.values(state.backupPans).map((pan) => (pan.component === id ? pan.amount : 0)),
    ...Object.values(state.batches).map((batch) =>
      batch.component === id && batch.finishedAt !== null && batch.thrownOutAt === null
        ? leftOfBatch(batch)
        : 0,
    ),
  ].reduce((sum, one) => sum + one, 0)
  const wastedFor = state.wastes[id] ?? {}
  const aside = setAside === undefined ? {} : { setAside }
  return { portion, loaded, used, wasted, wastedFor, corrected, takenAway, ...aside, left }
}

/**
 * Readings in the order in which they were taken, each under what it is of. What is put into a pan
 * or comes back from the range was read in its limit, or it would have been refused.
 */
const readingsOf = (
  state: RunningState,
  events: readonly Recorded[],
): readonly ReadingRecorded[] => {
  const of = ({ what, id }: Place): string => componentAt(state, what, id) ?? ''
  return events.flatMap((event): ReadingRecorded[] => {
    switch (event.type) {
      case 'temperatureRead': {
        const { at, temperature } = event.reading
        const component = of(event)
        return [{ of: event.what, component, at, temperature, met: event.inLimits }]
      }
      case 'batchCooked': {
        const { at, temperature } = event.reading
        const component = of({ what: 'batch', id: event.batch })
        return [{ of: 'cooking', component, at, temperature, met: event.met }]
      }
      case 'coolingRead': {
        const { at, temperature } = event.reading
        return [
          {
            of: 'cooling',
            component: of({ what: 'batch', id: event.batch }),
            at,
            temperature,
            met: null,
          },
        ]
      }
      case 'batchReheated': {
        const { at, temperature } = event.reading
        const component = of({ what: 'batch', id: event.batch })
        return [{ of: 'reheating', component, at, temperature, met: event.ok }]
      }
      case 'timeClockStarted': {
        const { at, temperature } = event.reading
        const component = of(event)
        return [{ of: 'time-start', component, at, temperature, met: null }]
      }
      case 'panLoaded':
      case 'panChanged':
      case 'panToppedUp': {
        if (!event.reading) return []
        const { at, temperature } = event.reading
        return [
          { of: 'pan', component: of({ what: 'pan', id: event.pan }), at, temperature, met: true },
        ]
      }
      case 'backupSet': {
        if (!event.reading) return []
        const { at, temperature } = event.reading
        return [{ of: 'backup', component: event.component, at, temperature, met: true }]
      }
      case 'offSaleResolved': {
        if (!event.reading) return []
        const { at, temperature } = event.reading
        const component = of(event)
        return [{ of: 'reheating', component, at, temperature, met: true }]
      }
      default:
        return []
    }
  })
}

const solutionsRead = (
  { station }: RunningState,
  events: readonly Recorded[],
): Pick<ServiceRecord, 'sanitizer'> => {
  if (!station.safety.sanitizer) return {}
  const all = events.filter((event) => event.type === 'sanitizerRead')
  const out = all.filter(({ problem }) => problem !== null)
  return { sanitizer: { read: all.length, out: out.length } }
}

/** A service that ends with more than so much of its time to come was cut short. Common practice, no source. */
const CUT_SHARE = 0.1

/** Whether it was closed well before it was said to close; unknown, and so no, where nobody said. */
const wasCutShort = (state: RunningState, closedAt: number): boolean => {
  if (state.closesAt === null) return false
  const { opens, closes } = state.counts
  return closes - minuteAt(state, closedAt) > CUT_SHARE * (closes - opens)
}

/** The record of a closed service, from its state and all that happened in it. */
export const serviceRecord = (state: RunningState, events: readonly Recorded[]): ServiceRecord => {
  const closedAt = state.closedAt ?? state.at
  const closes =
    state.closesAt === null ? Math.ceil(minuteAt(state, closedAt)) : state.counts.closes
  return {
    format: 'level-scoop/service-record',
    version: 1,
    service: state.service,
    station: state.station.id,
    kind: state.kind,
    revision: state.revision,
    openedAt: state.openedAt,
    closedAt,
    counts: { ...state.counts, closes: Math.max(closes, state.counts.opens + 1) },
    ...(wasCutShort(state, closedAt) ? { cutShort: true } : {}),
    made: state.made,
    components: Object.fromEntries(
      state.station.components.flatMap(({ id }): [string, ComponentRecord][] => {
        const one = componentRecord(state, id)
        return one ? [[id, one]] : []
      }),
    ),
    bias: biases(state),
    batches: Object.values(state.batches).map((batch) => {
      const { component, loads, startedAt, finishedAt, amount } = batch
      const measured = measuredBatch(state, batch)
      const made = { component, loads, startedAt, finishedAt, amount }
      return measured ? { ...made, measured } : made
    }),
    readings: readingsOf(state, events),
    buildTimes: state.buildTimes,
    ...(events.some(({ type }) => type === 'planDropped') ? { neverOpened: true } : {}),
    ...solutionsRead(state, events),
    ...(state.ends ? { ends: state.ends.map(({ id: _, at: __, ...one }) => one) } : {}),
  }
}
