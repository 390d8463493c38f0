/** Whether a component lasts, as the lead reads it: one word, and by when it is gone. */
import type { ByWhen } from '#lib/estimate/advice-reason.ts'
import type { Lasting } from '#lib/estimate/run-out.ts'
import type { StationForecast } from '#lib/estimate/station-forecast.ts'

const MINUTE_MS = 60_000
/** Nearer than this a range is said to the minute, else in steps of five. */
const SOON_MS = 20 * MINUTE_MS
const STEP_MS = 5 * MINUTE_MS
/** What may be gone within this stands out from what won't last until close. */
const PRESSING_MS = 30 * MINUTE_MS

/** When it is gone, epoch milliseconds; `to` null: it may also last until close. */
export interface Range {
  readonly from: number
  readonly to: number | null
}

export interface Outlook {
  readonly lasting: Lasting
  /** null where it is likely to last. */
  readonly by: Range | null
  /** It may be gone within half an hour. */
  readonly isSoon: boolean
}

/**
 * From the moment with a chance of 10 percent to that of 90, rounded outwards so that it never
 * claims to be surer than it is: to the minute within 20 minutes, else to five. Never before now.
 */
export const rangeOf = ({ early, late }: ByWhen, now: number): Range | null => {
  if (early === null) return null
  const step = early - now < SOON_MS ? MINUTE_MS : STEP_MS
  const from = Math.max(Math.floor(early / step) * step, Math.floor(now / MINUTE_MS) * MINUTE_MS)
  return { from, to: late === null ? null : Math.max(from, Math.ceil(late / step) * step) }
}

/** null while no forecast has come, or it says nothing of the component. */
export const outlookOf = (forecast: StationForecast | null, component: string): Outlook | null => {
  const found = forecast?.components[component]
  if (!forecast || !found) return null
  const { lasting, by } = found
  return {
    lasting,
    by: lasting === 'enough' ? null : rangeOf(by, forecast.at),
    isSoon: by.early !== null && by.early - forecast.at <= PRESSING_MS,
  }
}

/** A chance as people say it, of ten: never 0 or 10 unless it is so. */
export const outOfTen = (chance: number): number => {
  if (chance <= 0) return 0
  if (chance >= 1) return 10
  return Math.min(9, Math.max(1, Math.round(chance * 10)))
}

/** Under so many percent nobody can scoop more evenly. Common practice, no source. */
const LEAST_BIAS = 5

/** Percent that a component is scooped heavy (below zero: light) where it costs portions; else 0. */
export const biasThatMatters = (forecast: StationForecast | null, component: string): number => {
  const bias = forecast?.components[component]?.bias
  return bias && bias.fewer !== 0 && Math.abs(bias.percent) >= LEAST_BIAS ? bias.percent : 0
}
