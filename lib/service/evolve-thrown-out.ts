/** Folds what is to be thrown out, and that it was. */
import { addToAccounts } from '#lib/service/accounts.ts'
import { backupsInStep } from '#lib/service/backups-in-step.ts'
import type { Stamp } from '#lib/service/event.ts'
import type { DiscardSignedOff, ThrowOutPassed } from '#lib/service/food-event.ts'
import {
  componentIn,
  emptied,
  type StockKind,
  throwOutKey,
  withStock,
} from '#lib/service/held-stock.ts'
import { unmixedByBatch } from '#lib/service/mixing.ts'
import { withoutPanHold } from '#lib/service/pan-hold.ts'
import { restId } from '#lib/service/rest-of-pan.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findBuild, namedBuild, withBuildAs } from '#lib/service/tickets.ts'

/** Of a back-up pan: whether it still stands ready. */
const inStep = (state: RunningState, what: string, id: string): RunningState => {
  const component = what === 'backup' ? componentIn(state.station, id) : undefined
  return component === undefined ? state : backupsInStep(state, [component])
}

/** Something is to be thrown out from now on; a hold for want of a decision is over with it. */
export const toBeThrownOut = (
  before: RunningState,
  { what, id, because, keepsChange, at }: ThrowOutPassed & Stamp,
): RunningState => {
  const state = {
    ...before,
    toThrowOut: { ...before.toThrowOut, [throwOutKey(what, id)]: { what, id, because, since: at } },
  }
  if (what !== 'build') return inStep(state, what, id)
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

/** What of a batch was never loaded: it came and went. */
const batchSignedOff = (
  state: RunningState,
  id: string,
  { amount, at }: { readonly amount: number; readonly at: number },
): RunningState => {
  const batch = state.batches[id]
  if (!batch) throw new Error(`there is no batch ${id}`)
  const gone = { [batch.component]: amount }
  return {
    ...state,
    ...unmixedByBatch(state, id),
    batches: { ...state.batches, [id]: { ...batch, thrownOutAt: at, offSale: null } },
    accounts: addToAccounts(addToAccounts(state.accounts, 'loaded', gone), 'wasted', gone),
  }
}

const stockSignedOff = (
  state: RunningState,
  what: StockKind,
  id: string,
  amount: number,
): RunningState => {
  const component = componentIn(state.station, id) ?? ''
  const held = (what === 'pan' ? state.pans[id] : state.backupPans[id])?.amount ?? 0
  const accounts = addToAccounts(
    addToAccounts(state.accounts, 'wasted', { [component]: amount }),
    'corrected',
    { [component]: amount - held },
  )
  return inStep(withStock({ ...state, accounts }, what, id, emptied), what, id)
}

/** Somebody initialled that it was thrown out: it is waste. */
export const signedOff = (before: RunningState, event: DiscardSignedOff & Stamp): RunningState => {
  const { what, id, amount, reason } = event
  const { [throwOutKey(what, id)]: bound, ...toThrowOut } = before.toThrowOut
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
    case 'batch':
      return counted(batchSignedOff(state, id, event), state.batches[id]?.component ?? '', event)
    case 'pan':
    case 'backup': {
      const component = componentIn(state.station, id)
      if (component === undefined) throw new Error(`nothing is called ${id}`)
      return counted(stockSignedOff(state, what, id, amount), component, event)
    }
  }
}
