/** What is believed of pans before anything was read of them, and with another scoop. */

import {
  COUNTED,
  firstBelief,
  type Portioning,
  SCOOPED,
  type StockBelief,
} from '#lib/estimate/scoop-bias.ts'
import type { KnownBias } from '#lib/service/events/stock-event.ts'
import type { Portion } from '#lib/station/portion.ts'

export const portioningOf = (portion: Portion): Portioning =>
  portion.unit === 'piece' ? COUNTED : SCOOPED

export const firstBeliefs = (
  portions: Readonly<Record<string, Portion>>,
  components: readonly string[],
  known: Readonly<Record<string, KnownBias>>,
): Readonly<Record<string, StockBelief>> =>
  Object.fromEntries(
    components.flatMap((id) => {
      const portion = portions[id]
      if (!portion) return []
      const own = portion.unit === 'piece' ? null : (known[id] ?? null)
      return [[id, firstBelief(portioningOf(portion), own)]]
    }),
  )

/** In portions of another size: `by` old ones are one new. The bias of another tool isn't known. */
export const rescaled = (
  belief: StockBelief,
  by: number,
  known: KnownBias | null,
): StockBelief => ({
  ...firstBelief(SCOOPED, known),
  left: belief.left * by,
  leftVar: belief.leftVar * by * by,
})
