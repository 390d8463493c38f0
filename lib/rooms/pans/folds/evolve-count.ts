/** Folds what a pan was counted, weighed or seen to hold. */

import { withoutRest, withRest } from '#lib/rooms/food/facts/rest-of-pan.ts'
import { addToAccounts } from '#lib/service/accounts.ts'
import type { CountCorrected, Stamp } from '#lib/service/events/event.ts'
import type { HeldStock } from '#lib/service/food-state.ts'
import { componentIn, withStock } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'

/** A count of nothing sets the food aside; that it was a slip gives it back as it was. */
const counted = ({ ended, ...pan }: HeldStock, event: CountCorrected): HeldStock => ({
  ...pan,
  amount: event.to,
  full: Math.max(pan.full, event.to),
  counted: pan.counted + 1,
  ...(event.ends || (ended && event.was !== 'slip') ? { ended: ended ?? true } : {}),
})

/** @throws where the line has no such pan. */
export const corrected = (state: RunningState, event: CountCorrected & Stamp): RunningState => {
  const component = componentIn(state.station, event.pan)
  if (component === undefined) throw new Error(`the line has no pan ${event.pan}`)
  const next = withStock(state, 'pan', event.pan, (pan) => counted(pan, event))
  const of = (amount: number) => ({ [component]: amount })
  if (event.rest) {
    const { rest, from, at } = event
    const accounts = addToAccounts(next.accounts, 'takenAway', of(from))
    return withRest({ ...next, accounts }, rest, { component, amount: from, at })
  }
  const accounts = addToAccounts(next.accounts, 'corrected', of(event.to - event.from))
  const so = { ...next, accounts }
  return event.to > 0 || event.was === 'slip' ? withoutRest(so, event.pan) : so
}
