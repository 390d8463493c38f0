import type { Amounts } from '#lib/service/events/build-choice.ts'
import type { Taking } from '#lib/service/events/taking.ts'
import { componentIn, whereIs, withStock } from '#lib/service/held-stock.ts'
import type { RunningState, ServiceState } from '#lib/service/state.ts'
import type { Account } from '#lib/service/stock-state.ts'

export const EMPTY_ACCOUNT: Account = {
  onTickets: 0,
  used: 0,
  wasted: 0,
  loaded: 0,
  corrected: 0,
  takenAway: 0,
}

type Accounts = ServiceState['accounts']

/** Adds to one column of the accounts of several components; `sign` -1 takes away. */
export const addToAccounts = (
  accounts: Accounts,
  column: keyof Account,
  amounts: Amounts,
  sign: 1 | -1 = 1,
): Accounts => {
  const next: Record<string, Account> = { ...accounts }
  for (const [component, amount] of Object.entries(amounts)) {
    const account = next[component] ?? EMPTY_ACCOUNT
    next[component] = { ...account, [column]: (account[column] ?? 0) + sign * amount }
  }
  return next
}

/** Sums takings by component. */
export const byComponent = (state: RunningState, takings: readonly Taking[]): Amounts => {
  const sums: Record<string, number> = {}
  for (const taking of takings) {
    const component = componentIn(state.station, taking.pan)
    if (component !== undefined) sums[component] = (sums[component] ?? 0) + taking.amount
  }
  return sums
}

/** Takes food out of pans, on the line and behind it. */
export const takeFromPans = (state: RunningState, takings: readonly Taking[]): RunningState =>
  takings.reduce((so, { pan, amount }) => {
    const what = whereIs(so, pan)
    return what === null
      ? so
      : withStock(so, what, pan, (held) => ({ ...held, amount: held.amount - amount }))
  }, state)
