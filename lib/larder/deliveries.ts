/** What is remembered of deliveries: by ingredient, the newest last. */
import type { ColdNeed, DeliveredFood, Delivery, SentBack } from '#lib/larder/delivery.ts'

/** So many of each ingredient; the log has them all. */
export const MOST_DELIVERIES = 24

export type Deliveries = Readonly<Record<string, readonly Delivery[]>>

export const deliveriesOf = (deliveries: Deliveries, ingredient: string): readonly Delivery[] =>
  Object.hasOwn(deliveries, ingredient) ? (deliveries[ingredient] ?? []) : []

export const withDelivery = (
  deliveries: Deliveries,
  food: DeliveredFood,
  at: number,
  sentBack: SentBack | null,
): Deliveries => ({
  ...deliveries,
  [food.ingredient]: [
    ...deliveriesOf(deliveries, food.ingredient),
    { ...food, at, sentBack },
  ].slice(-MOST_DELIVERIES),
})

/** The one that was received last; null where none ever was. */
export const lastReceived = (all: readonly Delivery[]): Delivery | null =>
  all.findLast(({ sentBack }) => sentBack === null) ?? null

/**
 * Whether it is asked if its label wants it cold: of what is said to come dry and is held hot or cold.
 * What only goes into such food was asked once of this very product; what is itself held so is asked
 * each time, since its pan needs it.
 */
export const asksCold = (
  { comes, same }: Pick<DeliveredFood, 'comes' | 'same'>,
  cold: ColdNeed | null,
  last: Delivery | null,
): boolean => {
  if (comes !== 'dry' || cold === null) return false
  const isKnown = same === 'same' && last?.comes === 'dry' && last.needsNoCold === true
  return cold === 'itself' || !isKnown
}
