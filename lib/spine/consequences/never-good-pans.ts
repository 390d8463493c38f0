import type { Consequence } from '#lib/service/consequence.ts'
import type { TakenOffSale } from '#lib/service/events/food-event.ts'
import { allStock } from '#lib/service/held-stock.ts'
import { NEVER_GOOD } from '#lib/spine/consequences/places.ts'

/** What was loaded of a batch that was never good isn't sold on either: the person in charge decides. */
export const neverGoodPans: Consequence = {
  name: 'never-good-pans',
  reads: ['batches'],
  follow: ({ after, events }) => {
    const bad = events.flatMap((event) =>
      event.type === 'discardSignedOff' &&
      event.what === 'batch' &&
      NEVER_GOOD.includes(event.reason)
        ? [event.id]
        : [],
    )
    return allStock(after).flatMap(({ what, id, stock }): TakenOffSale[] => {
      const { offSale, batches, amount, ended } = stock
      const isKnown = offSale?.lastGoodAt === null && offSale.why === 'out-of-limits'
      return (amount > 0 || ended) && !isKnown && bad.some((batch) => batches.includes(batch))
        ? [{ type: 'takenOffSale', what, id, why: 'out-of-limits', lastGoodAt: null }]
        : []
    })
  },
}
