import type { ServiceState } from '#lib/service/state.ts'

const MINUTE_MS = 60_000

/** Minute of the civil day of the opening; runs on past midnight. */
export const minuteAt = (state: ServiceState, epochMs: number): number =>
  state.openedMinute + (epochMs - state.openedAt) / MINUTE_MS

/** The instant of such a minute, epoch milliseconds. */
export const instantAt = (state: ServiceState, minute: number): number =>
  Math.round(state.openedAt + (minute - state.openedMinute) * MINUTE_MS)
