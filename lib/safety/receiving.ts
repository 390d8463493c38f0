/** Whether food is taken as it is delivered: how warm it came, how solid, and to what day it is. */
import type { CivilDate } from '#lib/safety/date-stamp.ts'
import {
  meets,
  type SafetyLimits,
  type TemperatureLimit,
  type TimeLimit,
  type Written,
} from '#lib/safety/limits.ts'
import { questionReading, type ReadingQuestion } from '#lib/safety/readings.ts'
import type { Scale, Temperature } from '#lib/safety/temperature.ts'

/** How food comes: each is read in its own way and has a limit of its own. */
export const ARRIVALS = ['cold', 'milk', 'shellfish', 'eggs', 'frozen', 'hot', 'dry'] as const
export type Arrival = (typeof ARRIVALS)[number]

/** The limits that deliveries are held against. */
export type ReceivingLimits = Pick<
  SafetyLimits,
  'receivedCold' | 'receivedByItsLaw' | 'receivedEggAir' | 'receivedHot' | 'receivedCooledWithin'
>

/** What is read: the food, the air that it came in, whether it is solid, or nothing. */
export type ArrivalRead = 'food' | 'air' | 'solid' | 'nothing'

const READ: Readonly<Record<Arrival, ArrivalRead>> = {
  cold: 'food',
  milk: 'food',
  shellfish: 'air',
  eggs: 'air',
  frozen: 'solid',
  hot: 'food',
  dry: 'nothing',
}

export const readAtArrival = (comes: Arrival): ArrivalRead => READ[comes]

/** The limit that what comes so is read against; null where nothing is read in degrees. */
export const arrivalLimit = (comes: Arrival, limits: ReceivingLimits): TemperatureLimit | null => {
  switch (comes) {
    case 'cold':
      return limits.receivedCold
    case 'milk':
    case 'shellfish':
      return limits.receivedByItsLaw
    case 'eggs':
      return limits.receivedEggAir
    case 'hot':
      return limits.receivedHot
    case 'frozen':
    case 'dry':
      return null
  }
}

export interface Arrived {
  readonly comes: Arrival
  /** null: nobody read it. */
  readonly read: Temperature | null
  /** Of what comes frozen, hard with no sign of thawing; null: nobody felt it. */
  readonly solid: boolean | null
  /** The date on the pack; null where it has none. */
  readonly useBy: CivilDate | null
}

const memory = (paragraph: string): Written => ({
  document: 'FDA Food Code 2022',
  paragraph,
  certainty: 'memory',
})

/** What is labelled and shipped frozen is received frozen. */
export const FROZEN_STAYS_FROZEN = memory('3-202.11(E)')
/** No mark of ours goes past a maker's use-by date; for any other date a house rule. */
export const PACK_DATE = memory('3-501.17(B)')

/** Why it isn't taken, whoever wants it. */
export type TurnedAway =
  | { readonly code: 'past-date'; readonly useBy: CivilDate; readonly written: Written }
  | {
      readonly code: 'too-warm' | 'not-hot'
      readonly read: Temperature
      readonly limit: TemperatureLimit
    }
  | { readonly code: 'thawed'; readonly written: Written }

/** What nobody said yet: unread it isn't taken. */
export type ArrivalLack = 'temperature' | 'solid'

export const arrivalLack = ({ comes, read, solid }: Arrived): ArrivalLack | null => {
  switch (readAtArrival(comes)) {
    case 'food':
    case 'air':
      return read === null ? 'temperature' : null
    case 'solid':
      return solid === null ? 'solid' : null
    case 'nothing':
      return null
  }
}

/**
 * Why a delivery is turned away by what is known of it; null where it may be taken, or where what is
 * known doesn't tell. The pack's date is its last day.
 *
 * Source: FDA Food Code 2022, 3-202.11 and 3-501.17, from memory.
 *
 * @param today civil date at the station
 * @throws RangeError for what is no temperature
 */
export const turnedAway = (
  { comes, read, solid, useBy }: Arrived,
  today: CivilDate,
  limits: ReceivingLimits,
): TurnedAway | null => {
  if (useBy !== null && useBy < today) return { code: 'past-date', useBy, written: PACK_DATE }
  if (comes === 'frozen' && solid === false) return { code: 'thawed', written: FROZEN_STAYS_FROZEN }
  const limit = arrivalLimit(comes, limits)
  if (limit === null || read === null || meets(read, limit)) return null
  return { code: limit.bound === 'at-most' ? 'too-warm' : 'not-hot', read, limit }
}

/**
 * Within what time it has to be cold: what its own law lets come warmer than cold food may.
 * Null where it is cold already. Source: FDA Food Code 2022, 3-501.14(C), from memory.
 */
export const coolsWithin = (
  { comes, read }: Pick<Arrived, 'comes' | 'read'>,
  limits: ReceivingLimits,
): TimeLimit | null =>
  (comes === 'milk' || comes === 'shellfish') && read !== null && !meets(read, limits.receivedCold)
    ? limits.receivedCooledWithin
    : null

/** What to ask about a reading before it is taken: as `questionReading`. */
export const questionArrival = (
  comes: Arrival,
  read: Temperature,
  kitchenScale: Scale,
): ReadingQuestion | null =>
  questionReading(read, comes === 'hot' ? 'hot-holding' : 'cold-holding', kitchenScale)
