import { type Says, unionOf } from '#lib/needs/says.ts'
import { type DateStamp, earlierStamp } from '#lib/safety/date-stamp.ts'
import type { HeldBy } from '#lib/safety/holding.ts'
import type { TimeClock } from '#lib/safety/time-control.ts'

/** What governs the food in a pan. */
export interface PanFood {
  readonly heldBy: HeldBy
  readonly clock: TimeClock | null
  readonly dateMark: DateStamp | null
  /** When the oldest batch in it was finished, epoch milliseconds. */
  readonly finishedAt: number
  readonly says: Says
  /** Lidded, with its own scoop, not reached over: only such a pan serves a keep-apart build. */
  readonly guarded: boolean
}

const sooner = (one: TimeClock | null, other: TimeClock | null): TimeClock | null =>
  one === null || other === null ? (one ?? other) : one.throwOutAt <= other.throwOutAt ? one : other

export type TopUpProblem =
  | 'not-back-to-hot-or-cold'
  | 'needs-clock'
  | 'other-holding'
  | 'past-throw-out'

/**
 * Whether food may be added to a pan: nothing past its time on either side, nothing from time alone
 * into heat or cold, and into a pan on time alone only what has a clock of its own under the same rule,
 * so that it was read when it left; the older clock then binds both.
 */
export const topUpProblem = (inPan: PanFood, added: PanFood, now: number): TopUpProblem | null => {
  if ([inPan, added].some(({ clock }) => clock !== null && now >= clock.throwOutAt))
    return 'past-throw-out'
  if (inPan.clock === null && added.clock !== null) return 'not-back-to-hot-or-cold'
  if (inPan.clock !== null && added.clock === null) return 'needs-clock'
  if (inPan.clock !== null && inPan.clock.rule !== added.clock?.rule) return 'other-holding'
  return inPan.clock === null && inPan.heldBy !== added.heldBy ? 'other-holding' : null
}

/** What governs after food was added to food: the oldest clock and date, the union of allergens. */
export const toppedUp = (inPan: PanFood, added: PanFood): PanFood => {
  const clock = sooner(inPan.clock, added.clock)
  return {
    heldBy: clock === null ? inPan.heldBy : 'time',
    clock,
    dateMark: earlierStamp(inPan.dateMark, added.dateMark),
    finishedAt: Math.min(inPan.finishedAt, added.finishedAt),
    says: unionOf(inPan.says, added.says),
    guarded: inPan.guarded && added.guarded,
  }
}
