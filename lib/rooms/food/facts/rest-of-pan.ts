/** What is left in a pan that is changed or put away, where it goes nowhere but into the bin. */
import { addToAccounts } from '#lib/service/accounts.ts'
import type { RestToThrowOut } from '#lib/service/events/food-event.ts'
import { lastsUntil } from '#lib/service/food-limits.ts'
import type { HeldStock } from '#lib/service/food-state.ts'
import { boundAt, keyOf } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'

/** What the rest of a pan's load is called. */
export const restId = (pan: string, { load }: Pick<HeldStock, 'load'>): string => `${pan}.${load}`

/**
 * The rest of what a pan holds, where it may never be served again: on a clock, also one that isn't
 * over, since such food goes back to neither heat nor cold; or past its date. Null for what may.
 */
export const restOf = (
  state: RunningState,
  id: string,
  stock: HeldStock,
  now: number,
): RestToThrowOut | null => {
  if (stock.amount <= 0 || !stock.food) return null
  const until = lastsUntil(state, stock)
  const isOver = until !== null && until <= now
  const { clock } = stock.food
  if (clock === null && !isOver) return null
  const because = clock === null ? 'date' : isOver ? 'time' : 'taken-away'
  return { id: restId(id, stock), because }
}

/**
 * What a pan held that is counted to nothing now: gone it can be only into the bin, unless it was counted
 * wrong before. Off sale or past its time the pan itself waits for initials.
 */
export const restIfEmptied = (
  state: RunningState,
  id: string,
  stock: HeldStock,
  now: number,
): RestToThrowOut | null => {
  if (stock.offSale !== null || boundAt(state, 'pan', id) !== undefined) return null
  const rest = restOf(state, id, stock, now)
  return rest?.because === 'taken-away' ? { ...rest, because: 'counted-empty' } : rest
}

/** Whether what was counted out of a pan waits for somebody's initials, so that nothing goes in. */
export const isRestAwaited = (state: RunningState, id: string, stock: HeldStock): boolean =>
  boundAt(state, 'rest', restId(id, stock)) !== undefined

/** How many rests of a component wait for somebody's initials. */
export const restsOf = (state: RunningState, component: string): number =>
  Object.values(state.toThrowOut).filter(({ rest }) => rest?.component === component).length

/** What was taken out of a pan and is to be thrown out stays in the list, apart from the pan. */
export const withRest = (
  state: RunningState,
  rest: RestToThrowOut | undefined,
  of: { readonly component: string; readonly amount: number; readonly at: number },
): RunningState => {
  if (!rest) return state
  const { id, because } = rest
  const { component, amount, at } = of
  const bound = { what: 'rest', id, because, since: at, rest: { component, amount } } as const
  return { ...state, toThrowOut: { ...state.toThrowOut, [keyOf('rest', id)]: bound } }
}

/** What was counted out of a pan is there after all: nothing of it was taken away. */
export const withoutRest = (state: RunningState, pan: string): RunningState => {
  const key = keyOf('rest', `${pan}.${state.pans[pan]?.load}`)
  const { [key]: found, ...toThrowOut } = state.toThrowOut
  if (!found?.rest) return state
  const of = { [found.rest.component]: -found.rest.amount }
  const accounts = addToAccounts(addToAccounts(state.accounts, 'takenAway', of), 'corrected', of)
  return { ...state, toThrowOut, accounts }
}
