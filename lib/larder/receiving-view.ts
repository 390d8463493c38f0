/** What is delivered to a station, as its screen is told it: in line order, under the pan it goes into. */
import { deliveriesOf, lastReceived } from '#lib/larder/deliveries.ts'
import type { ColdNeed, Delivery, ReceivingFood } from '#lib/larder/delivery.ts'
import type { LarderState } from '#lib/larder/lot.ts'
import { civilDate } from '#lib/measure/civil.ts'
import { type DayOrder, dayOrderOf } from '#lib/measure/typed-day.ts'
import { waysTo } from '#lib/needs/declared.ts'
import { limitsWith, type TemperatureLimit } from '#lib/safety/limits.ts'
import type { Arrival, ReceivingLimits } from '#lib/safety/receiving.ts'
import type { Scale } from '#lib/safety/temperature.ts'
import { isReadAgain } from '#lib/station/read-again.ts'
import type { Component, StationDocument } from '#lib/station/station-document.ts'

/** What is known of a label on a day: read too long ago, it counts as unread. */
export type LabelKnown = 'read' | 'unread' | 'too-old'

export interface FoodToReceive {
  readonly ingredient: string
  readonly name: string
  readonly maker: string | null
  readonly pack: string | null
  readonly label: LabelKnown
  readonly readOn: string | null
  /** How it came last; null: it never did. */
  readonly comes: Arrival | null
  readonly cold: ColdNeed | null
  /** What it is held against where another station of the house lists it and asks more. */
  readonly limits?: ReceivingLimits
  /** The newest first. */
  readonly deliveries: readonly Delivery[]
}

export interface PanToReceive {
  readonly component: string
  readonly short: readonly string[]
  readonly foods: readonly FoodToReceive[]
}

export interface WellToReceive {
  readonly id: string
  readonly pans: readonly PanToReceive[]
}

export interface ReceivingShown {
  readonly station: string
  readonly name: string
  /** Epoch milliseconds. */
  readonly now: number
  /** Civil date at the station. */
  readonly today: string
  readonly timeZone: string
  readonly scale: ReceivingFood['scale']
  readonly dayOrder: DayOrder
  readonly limits: ReceivingLimits
  readonly clockJumpedBy: number | null
  /** As they are in the line; each food under the first pan that it goes into. */
  readonly wells: readonly WellToReceive[]
  /** What goes into no pan of the line. */
  readonly others: readonly FoodToReceive[]
}

/** So many of each are told; more are found by their lot. */
const MOST_TOLD = 6

export const receivingLimits = ({ safety }: Pick<StationDocument, 'safety'>): ReceivingLimits => {
  const { receivedCold, receivedByItsLaw, receivedEggAir, receivedHot, receivedCooledWithin } =
    limitsWith(safety.limits)
  return { receivedCold, receivedByItsLaw, receivedEggAir, receivedHot, receivedCooledWithin }
}

/** On each scale the figure that asks more, and where the one on °F is written. */
const stricter = (one: TemperatureLimit, other: TemperatureLimit): TemperatureLimit => {
  const isLess = one.bound === 'at-most'
  const of = (scale: Scale): number =>
    (isLess ? Math.min : Math.max)(one.tenths[scale], other.tenths[scale])
  const asksMore = isLess ? other.tenths.F < one.tenths.F : other.tenths.F > one.tenths.F
  return { ...(asksMore ? other : one), tenths: { F: of('F'), C: of('C') } }
}

const strictest = (one: ReceivingLimits, other: ReceivingLimits): ReceivingLimits => ({
  receivedCold: stricter(one.receivedCold, other.receivedCold),
  receivedByItsLaw: stricter(one.receivedByItsLaw, other.receivedByItsLaw),
  receivedEggAir: stricter(one.receivedEggAir, other.receivedEggAir),
  receivedHot: stricter(one.receivedHot, other.receivedHot),
  receivedCooledWithin:
    other.receivedCooledWithin.withinMs < one.receivedCooledWithin.withinMs
      ? other.receivedCooledWithin
      : one.receivedCooledWithin,
})

const isSame = (one: ReceivingLimits, other: ReceivingLimits): boolean =>
  JSON.stringify(one) === JSON.stringify(other)

/** Whether a line holds it hot or cold: as it comes, where nothing is done with it, or in what it goes into. */
const coldNeed = (documents: readonly StationDocument[], ingredient: string): ColdNeed | null => {
  const held = documents.flatMap((document) =>
    document.components.filter(
      (one) => one.held !== 'dry' && boughtFor(document, one.id).includes(ingredient),
    ),
  )
  if (held.length === 0) return null
  const isItself = ({ food, recipes }: Component) => food.kind === 'ready' && recipes.length === 0
  return held.some(isItself) ? 'itself' : 'in-it'
}

/**
 * What an ingredient is held against: the strictest limits of all stations that list it, since it is
 * delivered to the house. Name, time zone and scale are the first one's; null where none lists it.
 */
export const receivingFood = (
  documents: readonly StationDocument[],
  ingredient: string,
): ReceivingFood | null => {
  const listing = documents.flatMap((document) => {
    const found = document.ingredients.find(({ id }) => id === ingredient)
    return found ? [{ document, name: found.name }] : []
  })
  const [first] = listing
  if (!first) return null
  const all = listing.map(({ document }) => document)
  return {
    name: first.name,
    limits: all.map(receivingLimits).reduce(strictest),
    timeZone: first.document.timeZone,
    scale: first.document.safety.scale,
    cold: coldNeed(all, ingredient),
  }
}

/** Ids of what a component is made of, through recipes too, in the order of its card. */
const boughtFor = (document: StationDocument, id: string): readonly string[] => {
  const component = document.components.find((one) => one.id === id)
  if (!component) return []
  return [...waysTo(document, component)].flatMap((way) => way.at(-1) ?? [])
}

/**
 * @param now epoch milliseconds
 * @param house documents of all its stations, this one too
 * @throws RangeError for an unknown time zone
 */
export const receivingShown = (
  document: StationDocument,
  state: Pick<LarderState, 'deliveries' | 'clockJump'>,
  now: number,
  house: readonly StationDocument[] = [document],
): ReceivingShown => {
  const today = civilDate(now, document.timeZone)
  const limits = receivingLimits(document)
  const left = new Map(document.ingredients.map((one) => [one.id, one]))

  /** Each is told once, where it is met first. */
  const told = (id: string): readonly FoodToReceive[] => {
    const one = left.get(id)
    if (!one) return []
    left.delete(id)
    const all = deliveriesOf(state.deliveries, id)
    const known = receivingFood(house, id)
    const isStricter = known !== null && !isSame(known.limits, limits)
    const isOld = isReadAgain(document, one, today)
    return [
      {
        ingredient: id,
        name: one.name,
        maker: one.maker ?? null,
        pack: one.pack ?? null,
        label: one.readOn === null ? 'unread' : isOld ? 'too-old' : 'read',
        readOn: one.readOn,
        comes: lastReceived(all)?.comes ?? null,
        cold: known?.cold ?? null,
        ...(isStricter ? { limits: known.limits } : {}),
        deliveries: all.slice(-MOST_TOLD).reverse(),
      },
    ]
  }

  return {
    station: document.id,
    name: document.name,
    now,
    today,
    timeZone: document.timeZone,
    scale: document.safety.scale,
    dayOrder: dayOrderOf(document.locale),
    limits,
    clockJumpedBy: state.clockJump?.byMs ?? null,
    wells: document.line.wells.map(({ id, pans }) => ({
      id,
      pans: pans.map(({ component }) => ({
        component,
        short: document.components.find((one) => one.id === component)?.short ?? [component],
        foods: boughtFor(document, component).flatMap(told),
      })),
    })),
    others: document.ingredients.flatMap(({ id }) => told(id)),
  }
}

/** What came of a food today, the newest; null where nothing did. */
export const cameToday = (
  { deliveries }: Pick<FoodToReceive, 'deliveries'>,
  { today, timeZone }: Pick<ReceivingShown, 'today' | 'timeZone'>,
): Delivery | null => deliveries.find(({ at }) => civilDate(at, timeZone) === today) ?? null

/** All foods of a station as they are walked: along the line, then what is in no pan. */
export const foodsInOrder = ({
  wells,
  others,
}: Pick<ReceivingShown, 'wells' | 'others'>): readonly FoodToReceive[] => [
  ...wells.flatMap(({ pans }) => pans.flatMap(({ foods }) => foods)),
  ...others,
]

/** The next after one that didn't come yet today, once around; null where all did. */
export const nextToReceive = (shown: ReceivingShown, after: string): FoodToReceive | null => {
  const foods = foodsInOrder(shown)
  const at = foods.findIndex(({ ingredient }) => ingredient === after)
  return (
    [...foods.slice(at + 1), ...foods.slice(0, Math.max(at, 0))].find(
      (one) => cameToday(one, shown) === null,
    ) ?? null
  )
}

/**
 * What it is compared with: what came last; where it never came, the product whose label was read; null
 * where nobody read one, so that nothing is the same.
 */
export const comparedWith = ({
  deliveries,
  label,
}: Pick<FoodToReceive, 'deliveries' | 'label'>): 'last-time' | 'label' | null => {
  if (deliveries.some(({ sentBack }) => sentBack === null)) return 'last-time'
  return label === 'unread' ? null : 'label'
}
