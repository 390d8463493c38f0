/** What is delivered to a station, as its screen is told it: in line order, under the pan it goes into. */
import { deliveriesOf } from '#lib/larder/deliveries.ts'
import type { Delivery, ReceivingFood } from '#lib/larder/delivery.ts'
import type { LarderState } from '#lib/larder/lot.ts'
import { civilDate } from '#lib/measure/civil.ts'
import { type DayOrder, dayOrderOf } from '#lib/measure/typed-day.ts'
import { waysTo } from '#lib/needs/declared.ts'
import { limitsWith } from '#lib/safety/limits.ts'
import type { Arrival, ReceivingLimits } from '#lib/safety/receiving.ts'
import { isReadAgain } from '#lib/station/read-again.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

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

/** What an ingredient is held against at the first of some stations that lists it; null where none does. */
export const receivingFood = (
  documents: readonly StationDocument[],
  ingredient: string,
): ReceivingFood | null => {
  for (const one of documents) {
    const found = one.ingredients.find(({ id }) => id === ingredient)
    if (found)
      return {
        name: found.name,
        limits: receivingLimits(one),
        timeZone: one.timeZone,
        scale: one.safety.scale,
      }
  }
  return null
}

/** Ids of what a component is made of, through recipes too, in the order of its card. */
const boughtFor = (document: StationDocument, id: string): readonly string[] => {
  const component = document.components.find((one) => one.id === id)
  if (!component) return []
  return [...waysTo(document, component)].flatMap((way) => way.at(-1) ?? [])
}

/**
 * @param now epoch milliseconds
 * @throws RangeError for an unknown time zone
 */
export const receivingShown = (
  document: StationDocument,
  state: Pick<LarderState, 'deliveries' | 'clockJump'>,
  now: number,
): ReceivingShown => {
  const today = civilDate(now, document.timeZone)
  const left = new Map(document.ingredients.map((one) => [one.id, one]))

  /** Each is told once, where it is met first. */
  const told = (id: string): readonly FoodToReceive[] => {
    const one = left.get(id)
    if (!one) return []
    left.delete(id)
    const all = deliveriesOf(state.deliveries, id)
    const isOld = isReadAgain(document, one, today)
    return [
      {
        ingredient: id,
        name: one.name,
        maker: one.maker ?? null,
        pack: one.pack ?? null,
        label: one.readOn === null ? 'unread' : isOld ? 'too-old' : 'read',
        readOn: one.readOn,
        comes: all.findLast(({ sentBack }) => sentBack === null)?.comes ?? null,
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
    limits: receivingLimits(document),
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
