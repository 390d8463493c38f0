/** Why food may not be taken though it is there. */
import { type ClockDoubt, clockDoubt, isForSale, type StockKind } from '#lib/service/held-stock.ts'
import type { NotLeft } from '#lib/service/refusal.ts'
import type { RunningState } from '#lib/service/state.ts'

/** Why food may not be taken though it is there, and what helps. */
export const offSaleBecause = (
  component: string,
  doubt: ClockDoubt | null,
): Extract<NotLeft, { readonly code: 'off-sale' | 'clock-unsure' }> =>
  doubt === null
    ? { code: 'off-sale', component }
    : { code: 'clock-unsure', component, helps: doubt === 'unread' ? 'read' : 'confirm' }

/** Why what stands at one place may not be taken. */
export const stockOffSale = (
  state: RunningState,
  what: StockKind,
  id: string,
  component: string,
): NotLeft =>
  offSaleBecause(component, isForSale(state, what, id) ? clockDoubt(state, what, id) : null)
