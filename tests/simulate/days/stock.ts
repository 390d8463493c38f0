/** The food of a simulated station between services: a larder of lots, by the program's own rules. */
import { EMPTY_LARDER, type LarderState, type Lot, type LotKept } from '#lib/larder/lot.ts'
import { lotsInOrder } from '#lib/larder/take.ts'
import { instantOn } from '#lib/measure/civil.ts'
import { waysTo } from '#lib/needs/declared.ts'
import { atHandFor } from '#lib/rooms/food/facts/larder/at-hand.ts'
import { dateMark, stampOf } from '#lib/safety/date-marks.ts'
import { type End, endsOf } from '#lib/safety/ends.ts'
import { limitsWith } from '#lib/safety/limits.ts'
import { componentOf } from '#lib/station/find.ts'
import { portionsOf } from '#lib/station/portion.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { daysStation } from '#tests/simulate/days/truth.ts'

const { timeZone } = daysStation
const portions = portionsOf(daysStation)

/** Portions of one component that were made on one civil date. */
export interface Food {
  readonly component: string
  readonly madeOn: string
  readonly portions: number
}

const at = (on: string, time: string): number => {
  const instant = instantOn(on, time, timeZone)
  if (instant === null) throw new Error(`${on} has no ${time}`)
  return instant
}

const amountOf = (component: string): number => {
  const portion = portions[component]
  if (!portion) throw new Error(`${component} has no portion`)
  return portion.amount
}

const lastDayOf = (madeOn: string): string => {
  const limits = limitsWith(daysStation.safety.limits)
  const mark = dateMark({ preparedOn: madeOn, freezings: [], useBy: null }, limits)
  if (mark.mark !== 'last-day') throw new Error(`food of ${madeOn} has no last day`)
  return mark.lastDay
}

const lotOf = ({ component, madeOn, portions: count }: Food, kept: LotKept, on: string): Lot => {
  const found = componentOf(daysStation, component)
  const ways = [...waysTo(daysStation, found)].flatMap((way) => way.at(-1) ?? [])
  return {
    component,
    name: found.name,
    unit: portions[component]?.unit ?? 'mg',
    from: { service: `s-${on}`, station: daysStation.id, what: 'pan', id: component },
    how: 'counted',
    kept,
    cooledFrom: 'room',
    cooling: [],
    cooledAgain: false,
    reheated: false,
    cooking: [],
    readings: [],
    startedAt: at(madeOn, '08:00'),
    finishedAt: at(madeOn, '09:00'),
    dateMark: kept === 'dry' ? null : stampOf(lastDayOf(madeOn), timeZone),
    frozen: null,
    soiledBy: [],
    touched: [],
    batches: [],
    stoodOpen: true,
    madeOf: [...new Set(ways)].sort(),
    labels: null,
    before: [],
    presentUntil: null,
    under: { limits: daysStation.safety.limits, timeZone, scale: 'F' },
    amount: count * amountOf(component),
    setAsideAt: at(on, '14:00'),
    since: at(on, '14:00'),
    version: 1,
    place: null,
    bound: null,
    unreadSince: null,
  }
}

/** How a component may come to its end as its line closes, nobody staying to read what cools. */
const endOf = ({ component, madeOn }: Food, on: string): End => {
  const { held } = componentOf(daysStation, component)
  const ends = endsOf(
    {
      made: 'no',
      ready: 'yes',
      heldBy: held,
      from: held === 'hot' ? 'cooked' : 'room',
      clock: 'never',
      read: 'in-limits',
      coolingMissed: false,
      reheated: false,
      date: held === 'dry' ? 'none' : lastDayOf(madeOn) < on ? 'past' : 'ahead',
    },
    false,
  )
  const kept = ends.find(({ end, offered }) => offered && (end === 'cold' || end === 'dry'))
  return kept?.end ?? 'throw-out'
}

export interface Larder {
  readonly state: LarderState
  readonly next: number
}

/** Portions of all that it holds. */
export const portionsIn = ({ state }: Larder): number =>
  Object.values(state.lots).reduce(
    (sum, { amount, component }) => sum + Math.floor(amount / amountOf(component)),
    0,
  )

export const emptyLarder: Larder = { state: EMPTY_LARDER, next: 1 }

/** What is left as a line closes: set aside where its end allows it, else thrown out. */
export const closedInto = (
  larder: Larder,
  left: readonly Food[],
  on: string,
): { readonly larder: Larder; readonly thrownOut: readonly Food[] } => {
  const thrownOut: Food[] = []
  const lots: Record<string, Lot> = { ...larder.state.lots }
  let { next } = larder
  for (const food of left.filter((one) => one.portions > 0)) {
    const end = endOf(food, on)
    if (end === 'throw-out') {
      thrownOut.push(food)
      continue
    }
    lots[`l${next}`] = lotOf(food, end === 'dry' ? 'dry' : 'cold', on)
    next += 1
  }
  return { larder: { state: { ...larder.state, lots }, next }, thrownOut }
}

/** In the morning what stands cold is read, and what is past its date is thrown out. */
export const morningOf = (
  larder: Larder,
  on: string,
): { readonly larder: Larder; readonly thrownOut: readonly Food[] } => {
  const now = at(on, '07:30')
  const thrownOut: Food[] = []
  const lots: Record<string, Lot> = {}
  for (const [id, lot] of Object.entries(larder.state.lots)) {
    if (lot.dateMark !== null && now >= lot.dateMark.endsAt) {
      const { component } = lot
      const count = Math.floor(lot.amount / amountOf(component))
      thrownOut.push({ component, madeOn: lot.dateMark.lastDay, portions: count })
      continue
    }
    const reading = {
      temperature: { scale: 'F' as const, tenths: 390 },
      at: now,
      probe: 'probe',
      where: 'middle-stirred' as const,
      initialled: true,
    }
    lots[id] = lot.kept === 'cold' ? { ...lot, readings: [reading] } : lot
  }
  return { larder: { ...larder, state: { ...larder.state, lots, at: now } }, thrownOut }
}

/** Portions at hand of each component for the service of a day, as the plan counts on them. */
export const atHandOn = (larder: Larder, on: string): Readonly<Record<string, number>> => {
  const here = { station: daysStation satisfies StationDocument, portions }
  const day = { now: at(on, '08:00'), on, until: at(on, '13:30') }
  return Object.fromEntries(
    daysStation.components.map(({ id }) => [id, atHandFor(here, larder.state, id, day).portions]),
  )
}

/** All of some components goes onto the line, what goes first first; the rest stays. */
export const takenOut = (
  larder: Larder,
  components: readonly string[],
): { readonly larder: Larder; readonly taken: readonly Food[] } => {
  const taken: Food[] = []
  const lots: Record<string, Lot> = {}
  for (const [id, lot] of lotsInOrder(larder.state)) {
    if (!components.includes(lot.component)) {
      lots[id] = lot
      continue
    }
    taken.push({
      component: lot.component,
      madeOn: madeOnOf(lot),
      portions: Math.floor(lot.amount / amountOf(lot.component)),
    })
  }
  return { larder: { ...larder, state: { ...larder.state, lots } }, taken }
}

const madeOnOf = ({ startedAt }: Lot): string =>
  new Intl.DateTimeFormat('en-CA', { timeZone }).format(startedAt ?? 0)
