/** What falls due in the larder, also while no service is open. */
import { limitsOfLot, lotEndsAt } from '#lib/larder/days.ts'
import type { LarderEvent, LarderRecorded } from '#lib/larder/event.ts'
import { evolveLarder } from '#lib/larder/evolve.ts'
import type { LarderState, Lot } from '#lib/larder/lot.ts'
import { type CoolingState, coolingState } from '#lib/safety/cooling.ts'
import { HOUR_MS } from '#lib/safety/limits.ts'

export interface LarderDue {
  /** Epoch milliseconds. */
  readonly at: number
  readonly event: LarderEvent
}

/** What stands cold is read once a day. Common practice, no source: the code sets no interval. */
export const LOT_READ_WITHIN_MS = 24 * HOUR_MS

/** Where a lot stands in its cooling; `now` in epoch milliseconds. */
export const lotCooling = (lot: Lot, now: number): CoolingState =>
  coolingState(lot.cooling, lot.cooledFrom, now, limitsOfLot(lot), lot.finishedAt)

/** Until when a cold lot has to be read again, epoch milliseconds; null where it isn't read. */
export const lotReadBy = (lot: Lot): number | null =>
  lot.kept === 'cold' ? (lot.readings.at(-1)?.at ?? lot.since) + LOT_READ_WITHIN_MS : null

const ofCooling = (id: string, lot: Lot, at: number): readonly LarderDue[] => {
  if (lot.kept !== 'cooling') return []
  const missed = (due: number, stage: 1 | 2): readonly LarderDue[] => [
    { at: due, event: { type: 'lotCoolingMissed', lot: id, stage } },
  ]
  const cooling = lotCooling(lot, at)
  switch (cooling.state) {
    case 'first-stage':
      return missed(cooling.dueAt + 1, 1)
    case 'second-stage':
      return missed(cooling.dueAt + 1, 2)
    case 'missed':
      return missed(at, cooling.stage)
    case 'no-start':
    case 'warmed':
      return missed(at, 1)
    case 'cooled':
      return []
  }
}

const ofLot = (id: string, lot: Lot, at: number): readonly LarderDue[] => {
  if (lot.bound !== null) return []
  const endsAt = lotEndsAt(lot)
  const readBy = lot.unreadSince === null ? lotReadBy(lot) : null
  return [
    ...(endsAt === null ? [] : [{ at: endsAt, event: { type: 'lotPastDate', lot: id } } as const]),
    ...ofCooling(id, lot, at),
    ...(readBy === null
      ? []
      : [{ at: readBy, event: { type: 'lotReadingMissed', lot: id } } as const]),
  ]
}

/** The first thing that will fall due; none while nobody has said what a jump of the clock was. */
export const nextLarderDue = (state: LarderState): LarderDue | null =>
  state.clockJump !== null
    ? null
    : (Object.entries(state.lots)
        .flatMap(([id, lot]) => ofLot(id, lot, state.at))
        .sort((one, other) => one.at - other.at)[0] ?? null)

/** All that has fallen due by now, and the larder after it. */
export const larderFallsDue = (
  before: LarderState,
  now: number,
): { readonly state: LarderState; readonly recorded: readonly LarderRecorded[] } => {
  const recorded: LarderRecorded[] = []
  let state = before
  for (let next = nextLarderDue(state); next && next.at <= now; next = nextLarderDue(state)) {
    const stamped: LarderRecorded = {
      ...next.event,
      position: state.position + 1,
      at: Math.max(now, state.at),
      command: null,
      due: next.at,
    }
    state = evolveLarder(state, stamped)
    recorded.push(stamped)
  }
  return { state, recorded }
}
