/** Food that is put into a well on time alone: its clock runs from the reading that it is loaded with. */
import type { HeldBy } from '#lib/safety/holding.ts'
import { HOUR_MS } from '#lib/safety/limits.ts'
import type { Reading } from '#lib/safety/readings.ts'
import { type ClockStarted, startClock } from '#lib/safety/time-control.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** Whether a pan stands in a well by time alone. */
export const isOnTime = ({ line }: StationDocument, pan: string): boolean =>
  line.wells.some(({ held, pans }) => held === 'time' && pans.some(({ id }) => id === pan))

/** How what goes in is held until then: in such a well it is hot or cold until its clock starts. */
export const heldUntilIn = (
  station: StationDocument,
  into: { readonly id: string; readonly heldBy: HeldBy | null },
  hasClock: boolean,
): HeldBy | null =>
  into.heldBy === 'time' && !hasClock && isOnTime(station, into.id) ? null : into.heldBy

/**
 * The clock of what goes into a pan; null where none starts by it: another well, food that is dry, or
 * on a clock already, or goes to food without one. It left heat or cold as it was read in limits, which
 * is the last that anybody knows (3-501.19(B)(1)).
 */
export const clockAtLoad = (
  state: RunningState,
  into: { readonly id: string; readonly heldBy: HeldBy | null },
  food: { readonly heldBy: HeldBy; readonly reading: Reading | null },
  now: number,
): ClockStarted | null => {
  const { station } = state
  const { heldBy: from, reading } = food
  if (!isOnTime(station, into.id) || (from !== 'hot' && from !== 'cold')) return null
  if (into.heldBy !== null && into.heldBy !== 'time') return null
  return startClock(
    {
      rule: '4h',
      from,
      leftAt: Math.min(reading?.at ?? now, now),
      readings: reading ? [reading] : [],
      procedure: station.safety.timeProcedure,
    },
    now,
    limitsOf(station),
  )
}

/** For how many hours such food may be served from its reading on, as the document says. */
export const clockHours = (station: StationDocument): number =>
  limitsOf(station).timeOnly4h.withinMs / HOUR_MS
