/** Food of the larder that came into a service, as a batch of its component. */
import type { NotTheOldest } from '#lib/larder/event.ts'
import type { LotFood } from '#lib/larder/lot.ts'

export interface FoodTaken {
  readonly type: 'foodTaken'
  readonly batch: string
  readonly lot: string
  /** In the component's unit. */
  readonly amount: number
  /** All that goes along; of frozen food its date is that of thawing from today on. */
  readonly food: LotFood
  /** Why it wasn't the one that goes first. */
  readonly why?: NotTheOldest
}
