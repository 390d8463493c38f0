/** What is remembered of deliveries: by ingredient, the newest last. */
import type { DeliveredFood, Delivery, SentBack } from '#lib/larder/delivery.ts'

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
