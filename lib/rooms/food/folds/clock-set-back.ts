import type { Reading } from '#lib/safety/readings.ts'
import type { MadeUntil, TimeClock } from '#lib/safety/time-control.ts'
import type { BatchState, HeldStock } from '#lib/service/food-state.ts'
import type { Build, RunningState, Ticket } from '#lib/service/state.ts'

const mapped = <Value>(
  record: Readonly<Record<string, Value>>,
  change: (value: Value) => Value,
): Readonly<Record<string, Value>> =>
  Object.fromEntries(Object.entries(record).map(([key, value]) => [key, change(value)]))

/** Of a build in the making no moment tells any more whether it came after its start. */
const unsure = (build: Build): Build =>
  build.state === 'making' ? { ...build, setBackSince: build.since } : build

/** Tickets from the moment on at which the clock was set back. */
export const unsureTickets = (tickets: RunningState['tickets']): RunningState['tickets'] =>
  mapped(tickets, (ticket) =>
    ticket.builds.some(({ state }) => state === 'making')
      ? { ...ticket, builds: ticket.builds.map(unsure) }
      : ticket,
  )

/**
 * The state after the server's clock was set back: what food lived through stays as long as it was,
 * so that its moments lie further back by as much, and no limit of time gets longer by it.
 * @param byMs by how much, milliseconds above 0
 */
export const afterSetBack = (state: RunningState, byMs: number): RunningState => {
  const earlier = (at: number): number => at - byMs
  const orNull = (at: number | null): number | null => (at === null ? null : earlier(at))
  const read = <R extends Reading>(readings: readonly R[]): readonly R[] =>
    readings.map((one) => ({ ...one, at: earlier(one.at) }))
  const clocked = (clock: TimeClock | null): TimeClock | null =>
    clock && {
      ...clock,
      startedAt: earlier(clock.startedAt),
      throwOutAt: earlier(clock.throwOutAt),
    }
  const held = <Stock extends HeldStock>(stock: Stock): Stock => ({
    ...stock,
    since: earlier(stock.since),
    loadedAt: earlier(stock.loadedAt),
    readings: read(stock.readings),
    food: stock.food && {
      ...stock.food,
      clock: clocked(stock.food.clock),
      finishedAt: earlier(stock.food.finishedAt),
    },
    offSale: stock.offSale && { ...stock.offSale, lastGoodAt: orNull(stock.offSale.lastGoodAt) },
  })
  const cooked = (batch: BatchState): BatchState => ({
    ...batch,
    startedAt: earlier(batch.startedAt),
    finishedAt: orNull(batch.finishedAt),
    ...(batch.firstDone === undefined ? {} : { firstDone: earlier(batch.firstDone) }),
    cooking: read(batch.cooking),
    cooling: read(batch.cooling),
    ...(batch.presentUntil === undefined ? {} : { presentUntil: earlier(batch.presentUntil) }),
    reheat: batch.reheat && {
      ...batch.reheat,
      startedAt: earlier(batch.reheat.startedAt),
      readings: read(batch.reheat.readings),
    },
    clock: clocked(batch.clock),
    readings: read(batch.readings),
    toldAt: earlier(batch.toldAt),
    offSale: batch.offSale && { ...batch.offSale, lastGoodAt: orNull(batch.offSale.lastGoodAt) },
    newestAt: earlier(batch.newestAt),
  })
  const until = (made: MadeUntil | null): MadeUntil | null =>
    made && {
      collectBy: earlier(made.collectBy),
      throwOutAt: orNull(made.throwOutAt),
      ...(made.roomUntil === undefined ? {} : { roomUntil: earlier(made.roomUntil) }),
    }
  const stood = (ticket: Ticket): Ticket => ({
    ...ticket,
    builds: ticket.builds.map((build) => ({
      // What was begun by the clock that is set back now, before anybody confirmed it.
      ...unsure(build),
      until: until(build.until),
      ...(build.boundTo === undefined ? {} : { boundTo: earlier(build.boundTo) }),
    })),
  })
  const { shelf, sanitizer } = state
  const stands = shelf && {
    newest: { ...shelf.newest, at: earlier(shelf.newest.at) },
    goodAt: orNull(shelf.goodAt),
    offSale: shelf.offSale && { ...shelf.offSale, lastGoodAt: orNull(shelf.offSale.lastGoodAt) },
    ...(shelf.missed
      ? { missed: { ...shelf.missed, lastGoodAt: earlier(shelf.missed.lastGoodAt) } }
      : {}),
  }
  return {
    ...state,
    ...(stands ? { shelf: stands } : {}),
    ...(sanitizer ? { sanitizer: { ...sanitizer, at: earlier(sanitizer.at) } } : {}),
    pans: mapped(state.pans, held),
    backupPans: mapped(state.backupPans, held),
    batches: mapped(state.batches, cooked),
    tickets: mapped(state.tickets, stood),
  }
}
