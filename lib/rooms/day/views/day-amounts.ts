/** How much of a place's food came and went, and how full it was since it was loaded. */
import { readingSd } from '#lib/estimate/scoop-bias.ts'
import { everyTicket } from '#lib/service/every-ticket.ts'
import { isOfStock, stockOf } from '#lib/service/held-stock.ts'
import type { Placed } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findComponent } from '#lib/station/find.ts'

interface LevelPoint {
  /** Epoch milliseconds. */
  readonly at: number
  /** In the component's unit, whole. */
  readonly amount: number
}

interface PlaceLevel {
  /** From its last load to now, the oldest first; it falls at each point, and stays between. */
  readonly points: readonly LevelPoint[]
  /**
   * Every change of it is known with its time. Where it was spilled, counted or weighed since, it
   * isn't: only its load and now are, and nothing is drawn between them.
   */
  readonly isKnown: boolean
}

/** Null of what nothing was loaded into; a batch is taken from by the load. */
export const levelOf = (state: RunningState, place: Placed, now: number): PlaceLevel | null => {
  if (!isOfStock(place)) return null
  const stock = stockOf(state, place.what, place.id)
  if (!stock || stock.loadedAt === 0) return null
  const { load, full, amount, loadedAt } = stock
  const took = everyTicket(state)
    .flatMap(({ builds }) => builds)
    .flatMap(({ took: takings, madeAt }) =>
      madeAt === undefined
        ? []
        : takings
            .filter((one) => one.pan === place.id && one.load === load)
            .map((one) => ({ at: madeAt, amount: one.amount, counted: one.counted })),
    )
    .sort((one, other) => one.at - other.at)
  const sum = took.reduce((all, one) => all + one.amount, 0)
  const ends = [
    { at: loadedAt, amount: full },
    { at: now, amount },
  ]
  const isKnown = amount + sum === full && took.every(({ counted }) => counted === stock.counted)
  if (!isKnown) return { points: ends, isKnown }
  let left = full
  const falls = took.map((one) => {
    left -= one.amount
    return { at: Math.max(loadedAt, one.at), amount: left }
  })
  return { points: [...ends.slice(0, 1), ...falls, ...ends.slice(1)], isKnown }
}

interface DaySums {
  /** In the component's unit: what was put in, as it was counted since. */
  readonly loaded: number
  readonly used: number
  readonly wasted: number
}

/** Of a component in the whole service. */
export const daySums = (state: RunningState, component: string): DaySums => {
  const { loaded = 0, used = 0, wasted = 0 } = state.accounts[component] ?? {}
  return { loaded, used, wasted }
}

interface ThrownOutSoFar {
  readonly foods: readonly { readonly component: string; readonly amount: number }[]
  /** Of those of which somebody said what a portion costs. */
  readonly cents: number
  /** Of all of them somebody did. */
  readonly isAll: boolean
}

/** What this service threw out, the most costly first. */
export const thrownOutSoFar = (state: RunningState): ThrownOutSoFar => {
  const all = Object.entries(state.accounts).flatMap(([component, { wasted }]) => {
    if (wasted <= 0) return []
    const each = findComponent(state.station, component)?.costCents ?? null
    const portion = state.portions[component]?.amount ?? 0
    const cents = each === null || portion === 0 ? null : (each * wasted) / portion
    return [{ component, amount: wasted, cents }]
  })
  return {
    foods: [...all]
      .sort((one, other) => (other.cents ?? 0) - (one.cents ?? 0))
      .map(({ component, amount }) => ({ component, amount })),
    cents: Math.round(all.reduce((sum, { cents }) => sum + (cents ?? 0), 0)),
    isAll: all.every(({ cents }) => cents !== null),
  }
}

/** Nine readings in ten are so near, in standard deviations of a normal one. */
const NINE_IN_TEN = 1.645

/** From how few to how many whole portions an amount may be that was told by eye, nine times in ten. */
export const byEye = (
  portions: number,
  fullPortions: number,
): { readonly least: number; readonly most: number } => {
  const off = NINE_IN_TEN * readingSd('eye-check', Math.max(fullPortions, portions))
  return { least: Math.max(0, Math.floor(portions - off)), most: Math.ceil(portions + off) }
}
