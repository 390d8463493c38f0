/** Folds a jump of the server's clock, and what was read since. */

import { unsureTickets } from '#lib/rooms/food/folds/clock-set-back.ts'
import { lastReadAt } from '#lib/service/batch-read.ts'
import type { ClockJumped, Recorded, Stamp } from '#lib/service/events/event.ts'
import { keyOf } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'

/** With each jump it is open again how old each reading is. */
export const clockJumped = (
  state: RunningState,
  { byMs, at }: ClockJumped & Stamp,
): RunningState => ({
  ...state,
  ...(byMs < 0 ? { tickets: unsureTickets(state.tickets) } : {}),
  clockJump: { byMs: (state.clockJump?.byMs ?? 0) + byMs, at, read: {} },
})

interface WasRead {
  readonly key: string
  /** Null where other food came that nobody read. */
  readonly at: number | null
}

/** What is read of the next load says nothing of the ones that are finished. */
const ofBatch = (state: RunningState, id: string, at: number): WasRead | null => {
  const batch = state.batches[id]
  return batch && lastReadAt(state.station, batch) === at ? { key: keyOf('batch', id), at } : null
}

const readBy = (state: RunningState, event: Recorded): WasRead | null => {
  switch (event.type) {
    case 'batchCooked':
    case 'batchReheated':
    case 'coolingRead':
      return ofBatch(state, event.batch, event.reading.at)
    case 'temperatureRead':
      return { key: keyOf(event.what, event.id), at: event.reading.at }
    case 'offSaleResolved':
      return event.reading ? { key: keyOf(event.what, event.id), at: event.reading.at } : null
    case 'panLoaded':
    case 'panChanged':
      return { key: keyOf('pan', event.pan), at: event.reading?.at ?? null }
    case 'backupSet':
      return event.ready && event.backup !== undefined && event.amount !== undefined
        ? { key: keyOf('backup', event.backup), at: event.reading?.at ?? null }
        : null
    default:
      return null
  }
}

/** What an event tells of when food was read, while a jump isn't confirmed. */
export const withReadSinceJump = (state: RunningState, event: Recorded): RunningState => {
  const { clockJump } = state
  const found = clockJump ? readBy(state, event) : null
  if (!clockJump || !found) return state
  const { [found.key]: _, ...others } = clockJump.read
  const isSince = found.at !== null && found.at >= clockJump.at
  const read = isSince ? { ...others, [found.key]: found.at } : others
  return { ...state, clockJump: { ...clockJump, read } }
}
