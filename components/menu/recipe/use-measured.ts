import { useMemo } from 'react'
import { useAccess } from '#components/access/use-access.ts'
import type { RecipeNow } from '#components/menu/recipe/use-recipe.ts'
import { type CorrectedYield, cardText, correctedYield } from '#lib/recipes/measured-yield.ts'
import { hashOf } from '#lib/service/state-hash.ts'
import type { YieldsNow } from '#lib/tasting/http.ts'
import type { YieldSaved } from '#lib/tasting/yields.ts'

const LOOK_EVERY_MS = 10_000

export interface Measured {
  /** Of the card as it stands now, the oldest first; those that were taken out too. */
  readonly own: readonly YieldSaved[]
  /** How many are of the card as it was before. */
  readonly earlier: number
  /** By those that count. */
  readonly corrected: CorrectedYield | null
}

/** What own batches made of a card; `of` is null until the server told it, and of what has no pan. */
export const useMeasured = (
  station: string,
  now: Pick<RecipeNow, 'box' | 'card' | 'served'> | null,
) => {
  const { seen, again } = useAccess<YieldsNow>(`/tasting/yields?station=${station}`, LOOK_EVERY_MS)
  const { box, card } = now ?? {}
  const hash = useMemo(() => (card && box ? hashOf(cardText(card, box)) : null), [card, box])
  const component = now?.served?.component
  const of = useMemo((): Measured | null => {
    if (seen === null || hash === null || component === undefined) return null
    const all = seen.yields.filter((one) => one.component === component)
    const own = all.filter((one) => one.card === hash).sort((a, b) => (a.on < b.on ? -1 : 1))
    const counted = own.filter(({ out }) => out === null).map(({ ratio }) => ratio)
    return { own, earlier: all.length - own.length, corrected: correctedYield(counted) }
  }, [seen, hash, component])
  return { seen, again, of }
}
