/** One station over weeks under one way of deciding its loads: what it loses, and what it throws out. */
import { countBuild, noCounts } from '#lib/estimate/service-counts.ts'
import { NO_BUILD_TIMES } from '#lib/estimate/wait.ts'
import { instantOn } from '#lib/measure/civil.ts'
import { portionCents } from '#lib/rooms/advice/facts/stakes.ts'
import type { ServiceRecord } from '#lib/rooms/day/facts/service-record.ts'
import { loadSize } from '#lib/rooms/prep/facts/load-size.ts'
import { portionsOf } from '#lib/station/portion.ts'
import { type Chance, chanceOf } from '#tests/simulate/chance.ts'
import {
  atHandOn,
  closedInto,
  emptyLarder,
  type Food,
  type Larder,
  morningOf,
  portionsIn,
  takenOut,
} from '#tests/simulate/days/stock.ts'
import {
  type Ahead,
  comes,
  DAYS_A_WEEK,
  daysStation,
  expectedOf,
  menuOf,
  sizeOf,
  type Truth,
  type Wish,
} from '#tests/simulate/days/truth.ts'

const station = daysStation
const portions = portionsOf(station)
const OPENS = 660
const CLOSES = 780
/** A guest who finds something gone taps it so often, or has it tapped. */
const TAPS = 0.6
const FIRST_MONDAY = Date.parse('2026-01-05T00:00:00Z')
const DAY_MS = 86_400_000

/** The civil date of a day of a week. */
export const dateOf = ({ week, weekday }: Pick<Ahead, 'week' | 'weekday'>): string =>
  new Date(FIRST_MONDAY + (7 * week + weekday) * DAY_MS).toISOString().slice(0, 10)

/** What is known as the loads of a day are decided. */
export interface Known {
  readonly truth: Truth
  readonly ahead: Ahead
  readonly on: string
  readonly expected: number | null
  /** Portions at hand by component. */
  readonly there: Readonly<Record<string, number>>
  readonly records: readonly ServiceRecord[]
}

/** Loads by component. */
export type Loads = Readonly<Record<string, number>>
export type Way = (known: Known) => Loads

export interface DayPlayed {
  readonly ahead: Ahead
  readonly known: Known
  readonly loads: Loads
  /** Portions that guests wanted, served or not. */
  readonly wanted: Readonly<Record<string, number>>
  readonly builds: number
  readonly lostBuilds: number
  readonly lostCents: number
  readonly used: number
  readonly thrownOut: number
  readonly thrownOutCents: number
  readonly carried: number
}

/** Places from which portions are taken: what was made first goes first. */
type Line = Map<string, { madeOn: string; portions: number }[]>

const stockOf = (line: Line, component: string): number =>
  (line.get(component) ?? []).reduce((sum, one) => sum + one.portions, 0)

const takeFrom = (line: Line, component: string, count: number): void => {
  let rest = count
  for (const one of line.get(component) ?? []) {
    const taken = Math.min(rest, one.portions)
    one.portions -= taken
    rest -= taken
  }
}

const takesOf = ({ parts, base }: Wish, instead: string | null): Record<string, number> =>
  base === null ? { ...parts } : { ...parts, [instead ?? base]: 1 }

/** What a guest is served, or what was lacking. */
const served = (
  line: Line,
  wish: Wish,
): { readonly takes: Record<string, number> } | { readonly lacks: string } => {
  const lacks = Object.entries(wish.parts).find(([id, count]) => stockOf(line, id) < count)
  if (lacks) return { lacks: lacks[0] }
  if (wish.base === null) return { takes: takesOf(wish, null) }
  const others = wish.item.base?.choices ?? []
  const base = [wish.base, ...others].find((id) => stockOf(line, id) >= 1)
  return base === undefined ? { lacks: wish.base } : { takes: takesOf(wish, base) }
}

const marginOf = (wish: Wish): number =>
  Object.entries(takesOf(wish, null)).reduce(
    (sum, [id, count]) => sum - count * portionCents(station, id),
    wish.item.priceCents,
  )

const recordOf = (
  known: Pick<Known, 'on' | 'expected'>,
  counts: ServiceRecord['counts'],
  components: ServiceRecord['components'],
): ServiceRecord => {
  const openedAt = instantOn(known.on, '11:00', station.timeZone) ?? 0
  return {
    format: 'level-scoop/service-record',
    version: 1,
    service: `s-${known.on}`,
    station: station.id,
    kind: 'real',
    revision: 1,
    openedAt,
    closedAt: openedAt,
    counts,
    made: 0,
    components,
    bias: {},
    batches: [],
    readings: [],
    buildTimes: NO_BUILD_TIMES,
  }
}

/** Records that teach nothing: a practice of two dozen of one item, and a day that a fire alarm ended. */
const beside = (real: ServiceRecord): readonly ServiceRecord[] => {
  const [item] = station.items
  if (!item) return []
  let counts = noCounts(OPENS, CLOSES, 400)
  for (let i = 0; i < 24; i += 1)
    counts = countBuild(counts, OPENS, { item: item.id, portions: { [item.heart]: 9 } })
  const openedAt = real.openedAt + 1
  const other = { ...real, counts, openedAt, service: `${real.service}-other` }
  return [
    { ...other, kind: 'practice' },
    { ...other, cutShort: true },
  ]
}

const countsOf = (foods: readonly Food[]): number =>
  foods.reduce((sum, one) => sum + one.portions, 0)

const centsOf = (foods: readonly Food[]): number =>
  foods.reduce((sum, one) => sum + one.portions * portionCents(station, one.component), 0)

const setUp = (taken: readonly Food[], loads: Loads, on: string): Line => {
  const line: Line = new Map()
  const made = station.components.map((component) => ({
    component: component.id,
    madeOn: on,
    portions: (loads[component.id] ?? 0) * loadSize(station, component),
  }))
  for (const { component, madeOn, portions: count } of [...taken, ...made])
    line.set(component, [...(line.get(component) ?? []), { madeOn, portions: count }])
  return line
}

const serve = (line: Line, wishes: readonly Wish[], expected: number | null, chance: Chance) => {
  let counts = noCounts(OPENS, CLOSES, expected)
  const used: Record<string, number> = {}
  const wanted: Record<string, number> = {}
  let [lostBuilds, lostCents] = [0, 0]
  for (const [index, wish] of wishes.entries()) {
    const minute = OPENS + ((CLOSES - OPENS) * index) / wishes.length
    for (const [id, count] of Object.entries(takesOf(wish, null)))
      wanted[id] = (wanted[id] ?? 0) + count
    const got = served(line, wish)
    if ('takes' in got) {
      for (const [id, count] of Object.entries(got.takes)) {
        takeFrom(line, id, count)
        used[id] = (used[id] ?? 0) + count
      }
      counts = countBuild(counts, minute, { item: wish.item.id, portions: got.takes })
      continue
    }
    lostBuilds += 1
    lostCents += marginOf(wish)
    if (chance.happens(TAPS))
      counts = countBuild(counts, minute, { item: null, portions: { [got.lacks]: 1 } })
  }
  return { counts, used, wanted, lostBuilds, lostCents }
}

const playDay = (truth: Truth, ahead: Ahead, before: Standing, way: Way) => {
  const on = dateOf(ahead)
  const expected = expectedOf(truth, ahead, sizeOf(truth, ahead))
  const morning = morningOf(before.larder, on)
  const there = atHandOn(morning.larder, on)
  const known: Known = { truth, ahead, on, expected, there, records: before.records }
  const loads = way(known)
  const onSale = station.components
    .map(({ id }) => id)
    .filter((id) =>
      ahead.items.some(
        ({ parts, base }) =>
          parts.some(({ component }) => component === id) || base?.choices.includes(id),
      ),
    )
  const out = takenOut(morning.larder, onSale)
  const line = setUp(out.taken, loads, on)
  const loaded = Object.fromEntries(station.components.map(({ id }) => [id, stockOf(line, id)]))
  const day = serve(
    line,
    comes(truth, ahead),
    expected,
    chanceOf(truth.seed, `taps ${ahead.week} ${ahead.weekday}`),
  )
  const components = Object.fromEntries(
    station.components.flatMap(({ id }) => {
      const portion = portions[id]
      if (!portion) return []
      const of = (count = 0) => count * portion.amount
      return [
        [
          id,
          {
            ...{ portion, loaded: of(loaded[id]), used: of(day.used[id]) },
            ...{ wasted: 0, wastedFor: {}, corrected: 0, takenAway: 0 },
            left: of(stockOf(line, id)),
          },
        ],
      ]
    }),
  )
  const left = [...line].flatMap(([component, foods]) =>
    foods.map((one) => ({ component, madeOn: one.madeOn, portions: one.portions })),
  )
  const closed = closedInto(out.larder, left, on)
  const thrown = [...morning.thrownOut, ...closed.thrownOut]
  const record = recordOf(known, day.counts, components)
  const played: DayPlayed = {
    ahead,
    known,
    loads,
    wanted: day.wanted,
    builds: Object.values(day.counts.builds).reduce((sum, one) => sum + one, 0) + day.lostBuilds,
    lostBuilds: day.lostBuilds,
    lostCents: day.lostCents,
    used: Object.values(day.used).reduce((sum, one) => sum + one, 0),
    thrownOut: countsOf(thrown),
    thrownOutCents: centsOf(thrown),
    carried: portionsIn(closed.larder),
  }
  const isOther = ahead.weekday === 0
  return {
    played,
    larder: closed.larder,
    records: [...before.records, record, ...(isOther ? beside(record) : [])],
  }
}

/** Where a station stands after a week: its larder, and what was recorded. */
export interface Standing {
  readonly larder: Larder
  readonly records: readonly ServiceRecord[]
}

export const nothingYet: Standing = { larder: emptyLarder, records: [] }

/** Weeks under one way, from where a station stands. */
export const playWeeks = (
  truth: Truth,
  weeks: { readonly from: number; readonly to: number },
  way: Way,
  before: Standing,
): { readonly days: readonly DayPlayed[]; readonly standing: Standing } => {
  let standing = before
  const days: DayPlayed[] = []
  for (let week = weeks.from; week < weeks.to; week += 1)
    for (let weekday = 0; weekday < DAYS_A_WEEK; weekday += 1) {
      const ahead: Ahead = { week, weekday, items: menuOf(truth, week) }
      const { played, ...next } = playDay(truth, ahead, standing, way)
      days.push(played)
      standing = next
    }
  return { days, standing }
}
