/** Two states and what led from the one to the other, for a rule of consequences that is asked alone. */
import type { Reading } from '#lib/safety/readings.ts'
import type { Consequence, Happened } from '#lib/service/consequence.ts'
import type { ServiceEvent } from '#lib/service/events/event.ts'
import type { HeldStock, OffSale } from '#lib/service/food-state.ts'
import { keyOf, type StockKind, withStock } from '#lib/service/held-stock.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
import { findBuild, withBuildAs } from '#lib/service/tickets.ts'
import { consequences } from '#lib/spine/consequences/consequences.ts'
import { at } from '#tests/support/service.ts'

export const happened = (
  before: RunningState,
  after: RunningState = before,
  events: readonly ServiceEvent[] = [],
  known: Partial<Happened['known']> = {},
): Happened => ({
  before,
  after,
  events,
  known: { now: after.at, newestLabels: {}, ...known },
})

export const readAt = (at: number): Reading => ({
  temperature: { tenths: 1_500, scale: 'F' },
  at,
  probe: 'probe 1',
  where: 'middle-stirred',
  initialled: true,
})

export const stockWith = (
  state: RunningState,
  id: string,
  over: Partial<HeldStock>,
  what: StockKind = 'pan',
): RunningState => withStock(state, what, id, (stock) => ({ ...stock, ...over }))

export const offSale = (over: Partial<OffSale> = {}): OffSale => ({
  why: 'out-of-limits',
  since: 2_000,
  lastGoodAt: 1_000,
  ...over,
})

/** Something that is to be thrown out. */
export const toThrowOut = (
  state: RunningState,
  what: StockKind | 'build',
  id: string,
  because: RunningState['toThrowOut'][string]['because'] = 'time',
): RunningState => ({
  ...state,
  toThrowOut: { ...state.toThrowOut, [keyOf(what, id)]: { what, id, because, since: 5_000 } },
})

export const buildWith = (
  state: RunningState,
  name: string,
  over: Partial<Build>,
): RunningState => {
  const { ticket, letter } = at(name)
  const build = findBuild(state, ticket, letter)
  if (!build) throw new Error(`there is no ${name}`)
  return withBuildAs(state, ticket, { ...build, ...over })
}

/** The same state, as it looks to a rule that reads this slice once that changed. */
export const touched = (
  state: RunningState,
  slice: 'pans' | 'backupPans' | 'tickets' | 'past' | 'toThrowOut' | 'batches',
): RunningState => ({ ...state, [slice]: { ...state[slice] } })

/** What a rule adds, asked only where a slice that it reads changed. */
export const asked = (rule: Consequence, ...of: Parameters<typeof happened>) =>
  consequences(happened(...of), [rule])
