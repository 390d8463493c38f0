/** Food of no batch and out of no back-up pan, and what is asked of it. */
import { needsReading } from '#lib/rooms/food/facts/food-now.ts'
import type { HeldBy } from '#lib/safety/holding.ts'
import type { ToldDates } from '#lib/safety/told-dates.ts'
import type { Refusal } from '#lib/service/refusal.ts'

interface Nameless extends Pick<ToldDates, 'preparedOn'> {
  readonly batch?: string | undefined
  readonly from?: string | undefined
  readonly bought?: true | undefined
}

/** Food of no batch and out of no back-up pan: nothing tells it from what was taken away. */
export const isNameless = ({ batch, from }: Pick<Nameless, 'batch' | 'from'>): boolean =>
  batch === undefined && from === undefined

/**
 * What isn't said of food without a name: that it is straight from the pack, and since when that is
 * open where it is kept cold. A batch that was read warm, or is too old, could be anything unnamed.
 */
export const unsaidOf = (
  told: Nameless,
  component: string,
  heldBy: HeldBy,
): Extract<Refusal, { readonly code: 'not-said-bought' }> | null => {
  if (!isNameless(told) || !needsReading(heldBy)) return null
  const not = { code: 'not-said-bought', component } as const
  if (told.bought !== true) return { ...not, lacks: 'bought' }
  return heldBy === 'cold' && told.preparedOn === undefined ? { ...not, lacks: 'opened-on' } : null
}
