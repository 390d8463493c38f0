import type { HandedOverOf } from '#lib/service/events/handed-over-event.ts'
import type { StockKind } from '#lib/service/held-stock.ts'
import type { ReadHere } from '#lib/station/read-here.ts'

/** What is done in a dialog of its own: food that comes, goes, is read, kept or thrown out. */
export type FoodTask =
  | { readonly task: 'put'; readonly pan: string; readonly way: 'load' | 'change' | 'top-up' }
  | { readonly task: 'fill-backup'; readonly id: string }
  | { readonly task: 'read'; readonly what: 'batch' | StockKind; readonly id: string }
  | { readonly task: 'clock'; readonly what: 'batch' | StockKind; readonly id: string }
  | { readonly task: 'resolve'; readonly what: 'batch' | StockKind; readonly id: string }
  | { readonly task: 'handed-over'; readonly what: HandedOverOf; readonly id: string }
  | { readonly task: 'weigh'; readonly pan: string }
  | { readonly task: 'waste'; readonly pan: string }
  | { readonly task: 'keep'; readonly component: string }
  | { readonly task: 'scoop'; readonly component: string }
  | { readonly task: 'short'; readonly component: string }
  | { readonly task: 'behind' }
  /** What is read beside food. */
  | { readonly task: 'read-here'; readonly of: ReadHere }
  | { readonly task: 'start-batch'; readonly component: string | null }
  | { readonly task: 'batch'; readonly id: string }
  | {
      readonly task: 'throw-out'
      /** Thrown out early; null: the list of what has to be. */
      readonly early: { readonly what: 'batch' | StockKind; readonly id: string } | null
    }

/** What stands in the place of the cards, or over the board. */
export type Chosen =
  | { readonly kind: 'pan'; readonly id: string }
  | { readonly kind: 'item'; readonly id: string }
  | { readonly kind: 'close' }
  | { readonly kind: 'in-charge' }
  /** What was given out and isn't paid. */
  | { readonly kind: 'unpaid' }
  /** `ingredient`: its label is to be read; null: whichever is chosen there. */
  | { readonly kind: 'labels'; readonly ingredient: string | null }
  | { readonly kind: 'food'; readonly food: FoodTask }

export type Choose = (next: Chosen) => void
