/** Folds what is to be thrown out, and that it was. */

import { mixKey, unmixedBy } from '#lib/rooms/care/facts/mixing.ts'
import { restId } from '#lib/rooms/food/facts/rest-of-pan.ts'
import { addToAccounts } from '#lib/service/accounts.ts'
import type { Stamp } from '#lib/service/events/event.ts'
import type { DiscardSignedOff, Place, ThrowOutPassed } from '#lib/service/events/food-event.ts'
import { inStep, unattended, withBatch } from '#lib/service/folding/food-folding.ts'
import { withoutPanHold } from '#lib/service/folding/pan-hold.ts'
import { emptied, keyOf, withStock } from '#lib/service/held-stock.ts'
import { knownPlace } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findBuild, namedBuild, withBuildAs } from '#lib/service/tickets.ts'

/** Something is to be thrown out from now on; a hold for want of a decision is over with it. */
export const toBeThrownOut = (
  before: RunningState,
  { what, id, because, keepsChange, at }: ThrowOutPassed & Stamp,
): RunningState => {
  const state = {
    ...before,
    toThrowOut: { ...before.toThrowOut, [keyOf(what, id)]: { what, id, because, since: at } },
  }
  if (what !== 'build') return inStep(state, id)
  const { ticket, letter } = namedBuild(id)
  const build = findBuild(state, ticket, letter)
  return build && !keepsChange ? withBuildAs(state, ticket, withoutPanHold(build)) : state
}

/** Counts what was thrown out under its reason. */
const counted = (
  state: RunningState,
  component: string,
  { amount, reason }: Pick<DiscardSignedOff, 'amount' | 'reason'>,
): RunningState => {
  if (amount === 0) return state
  const own = state.wastes[component]
  return {
    ...state,
    wastes: { ...state.wastes, [component]: { ...own, [reason]: (own?.[reason] ?? 0) + amount } },
  }
}

/** What was counted out of a pan and initialled as thrown out is in it by no slip of the count. */
const goneFrom = (state: RunningState, rest: string): RunningState => ({
  ...state,
  pans: Object.fromEntries(
    Object.entries(state.pans).map(([id, pan]) => [
      id,
      pan.ended && rest === restId(id, pan) ? { ...pan, ended: 'thrown-out' as const } : pan,
    ]),
  ),
})

const restSignedOff = (
  state: RunningState,
  rest: { readonly component: string; readonly amount: number },
  amount: number,
): RunningState => {
  const of = (value: number) => ({ [rest.component]: value })
  let accounts = addToAccounts(state.accounts, 'takenAway', of(rest.amount), -1)
  accounts = addToAccounts(accounts, 'wasted', of(amount))
  return { ...state, accounts: addToAccounts(accounts, 'corrected', of(amount - rest.amount)) }
}

/** What of a batch was never loaded came and went: no account knew of it. What stood was on one. */
const placeSignedOff = (
  state: RunningState,
  { what, id }: Place,
  { amount, at }: { readonly amount: number; readonly at: number },
): RunningState => {
  const placed = knownPlace(state, { what, id })
  const of = (value: number) => ({ [placed.component]: value })
  const wasted = { ...state, accounts: addToAccounts(state.accounts, 'wasted', of(amount)) }
  if (what !== 'batch') {
    const accounts = addToAccounts(wasted.accounts, 'corrected', of(amount - placed.amount))
    return inStep(withStock({ ...wasted, accounts }, what, id, emptied), id)
  }
  const accounts = addToAccounts(wasted.accounts, 'loaded', of(amount))
  const over = { ...wasted, ...unmixedBy(wasted, mixKey({ what, id })), accounts }
  return withBatch(over, id, (batch) => ({ ...unattended(batch), thrownOutAt: at, offSale: null }))
}

/** Somebody initialled that it was thrown out: it is waste. */
export const signedOff = (before: RunningState, event: DiscardSignedOff & Stamp): RunningState => {
  const { what, id, amount, reason } = event
  const { [keyOf(what, id)]: bound, ...toThrowOut } = before.toThrowOut
  const state = { ...before, toThrowOut }
  switch (what) {
    case 'build': {
      // Its food is counted as waste where it is made again or cancelled; here only why.
      const { ticket, letter } = namedBuild(id)
      return Object.entries(findBuild(state, ticket, letter)?.takes ?? {}).reduce(
        (so, [component, portion]) => counted(so, component, { amount: portion, reason }),
        state,
      )
    }
    case 'rest': {
      if (!bound?.rest) throw new Error(`nothing was taken away as ${id}`)
      return counted(
        restSignedOff(goneFrom(state, id), bound.rest, amount),
        bound.rest.component,
        event,
      )
    }
    default: {
      const { component } = knownPlace(state, { what, id })
      return counted(placeSignedOff(state, { what, id }, event), component, event)
    }
  }
}
