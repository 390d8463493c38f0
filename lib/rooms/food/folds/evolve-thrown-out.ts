/** Folds what is to be thrown out, and that it was. */

import { mixKey, unmixedBy } from '#lib/rooms/care/facts/mixing.ts'
import { restId } from '#lib/rooms/food/facts/rest-of-pan.ts'
import { addToAccounts } from '#lib/service/accounts.ts'
import type { FoodEnded } from '#lib/service/events/end-event.ts'
import type { Stamp } from '#lib/service/events/event.ts'
import type { DiscardSignedOff, Place, ThrowOutPassed } from '#lib/service/events/food-event.ts'
import { inStep, unattended, withBatch } from '#lib/service/folding/food-folding.ts'
import { withoutPanHold } from '#lib/service/folding/pan-hold.ts'
import { emptied, keyOf, withStock } from '#lib/service/held-stock.ts'
import { knownPlace } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { WastedFor } from '#lib/service/stock-state.ts'
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
  {
    amount,
    reason,
  }: Pick<DiscardSignedOff, 'amount'> & {
    readonly reason: keyof WastedFor
  },
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

/**
 * What was at a place is gone: thrown out, eaten by the crew, or set aside. What of a batch was never
 * loaded came and went: no account knew of it. What stood was on one, and found other it is corrected.
 */
export const placeOver = (
  before: RunningState,
  event: (FoodEnded | (DiscardSignedOff & Place)) & Stamp,
): RunningState => {
  const { what, id, amount, at, how } = event
  const end = event.type === 'foodEnded' ? event.end : undefined
  const reason = event.type === 'foodEnded' ? ('staff-meal' as const) : event.reason
  const placed = knownPlace(before, event)
  const { component } = placed
  const of = (value: number) => ({ [component]: value })
  const isKept = end !== undefined && end !== 'crew'
  const counts = isKept ? before : counted(before, component, { amount, reason })
  const out = addToAccounts(before.accounts, isKept ? 'setAside' : 'wasted', of(amount))
  const isBatch = what === 'batch'
  const state: RunningState = {
    ...counts,
    ...(isBatch ? unmixedBy(before, mixKey(event)) : {}),
    accounts: addToAccounts(
      out,
      isBatch ? 'loaded' : 'corrected',
      of(isBatch ? amount : amount - placed.amount),
    ),
    ...(how
      ? {
          ends: [
            ...(before.ends ?? []),
            { what, id, end: end ?? ('throw-out' as const), component, amount, how, at },
          ],
        }
      : {}),
  }
  return isBatch
    ? withBatch(state, id, (batch) => ({
        ...unattended(batch),
        thrownOutAt: at,
        offSale: null,
        ...(end ? { ended: end } : {}),
      }))
    : inStep(withStock(state, what, id, emptied), id)
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
    default:
      return placeOver(state, { ...event, what })
  }
}
