import type { HandedOverOf } from '#lib/service/events/handed-over-event.ts'
import type { StockKind } from '#lib/service/held-stock.ts'
import type { ReadHere } from '#lib/station/read-here.ts'

interface At {
  readonly what: 'batch' | StockKind
  readonly id: string
}

/** What is done under the line, and to what: the one job that is open. */
export type Chosen =
  /** A pan with all that can be done with it. */
  | { readonly task: 'pan'; readonly pan: string }
  | { readonly task: 'put'; readonly pan: string; readonly way: 'load' | 'change' | 'top-up' }
  /** All pans into which nothing was put yet, on one sheet. */
  | { readonly task: 'set-up' }
  | { readonly task: 'fill-backup'; readonly id: string }
  | ({ readonly task: 'read' } & At)
  /** Readings one after the other: `of` all of them in their order, `at` the one that is taken. */
  | {
      readonly task: 'round'
      readonly of: readonly At[]
      readonly at: At
      /** When it was begun, epoch milliseconds: what was read since is done. */
      readonly since: number
    }
  | ({ readonly task: 'clock' } & At)
  | ({ readonly task: 'resolve' } & At)
  | { readonly task: 'handed-over'; readonly what: HandedOverOf; readonly id: string }
  | { readonly task: 'count'; readonly pan: string }
  | { readonly task: 'weigh'; readonly pan: string }
  | { readonly task: 'waste'; readonly pan: string }
  | { readonly task: 'other-scoop'; readonly pan: string }
  | { readonly task: 'keep'; readonly component: string }
  | { readonly task: 'scoop'; readonly component: string }
  | { readonly task: 'short'; readonly component: string }
  | { readonly task: 'selling'; readonly what: 'component' | 'item'; readonly id: string }
  /** Back-up pans and batches of one component; null: of all. */
  | { readonly task: 'behind'; readonly component: string | null }
  /** What is read beside food. */
  | { readonly task: 'read-here'; readonly of: ReadHere }
  | { readonly task: 'start-batch'; readonly component: string | null }
  | { readonly task: 'batch'; readonly id: string }
  /** Thrown out early; null: the list of what has to be. */
  | { readonly task: 'throw-out'; readonly early: At | null }
  /** `ingredient`: its label is to be read; null: whichever is chosen there. */
  | { readonly task: 'labels'; readonly ingredient: string | null }
  | { readonly task: 'in-charge' }
  /** What was given out and isn't paid. */
  | { readonly task: 'unpaid' }
  /** What the food at a place comes to, one after the other in line order. */
  | {
      readonly task: 'end'
      readonly at: At
      /** All that is hot goes with it: each of these. */
      readonly hot?: readonly At[]
    }
  | { readonly task: 'close' }

export type Choose = (next: Chosen) => void
