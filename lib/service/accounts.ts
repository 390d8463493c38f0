import { findPan } from '#lib/menu/find.ts'
import type { Amounts } from '#lib/service/build-choice.ts'
import type { Taking } from '#lib/service/event.ts'
import type { Account, PanState, RunningState, ServiceState } from '#lib/service/state.ts'

export const EMPTY_ACCOUNT: Account = {
  onTickets: 0,
  used: 0,
  wasted: 0,
  loaded: 0,
  corrected: 0,
  takenAway: 0,
}

type Accounts = ServiceState['accounts']
type Pans = ServiceState['pans']

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
    next[component] = { ...account, [column]: account[column] + sign * amount }
  }
  return next
}

/** Sums takings by component. */
export const byComponent = (state: RunningState, takings: readonly Taking[]): Amounts => {
  const sums: Record<string, number> = {}
  for (const taking of takings) {
    const component = findPan(state.station, taking.pan)?.component
    if (component !== undefined) sums[component] = (sums[component] ?? 0) + taking.amount
  }
  return sums
}

/** Takes food out of the pans. */
export const takeFromPans = (pans: Pans, takings: readonly Taking[]): Pans => {
  const next: Record<string, PanState> = { ...pans }
  for (const { pan, amount } of takings) {
    const before = next[pan]
    if (before) next[pan] = { ...before, amount: before.amount - amount }
  }
  return next
}
