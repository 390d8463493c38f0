/** What is open though nothing is asked of the lead: nothing to do is said only where there is none of it. */

import { PUT_OFF_MINUTES } from '#lib/estimate/advice.ts'
import type { AdviceReason, ByWhen } from '#lib/estimate/advice-reason.ts'
import type { Lasting } from '#lib/estimate/run-out.ts'
import type { ComponentForecast, StationForecast } from '#lib/estimate/station-forecast.ts'
import { levelOf } from '#lib/rooms/pans/facts/levels.ts'
import { instantAt } from '#lib/service/minute.ts'
import type { RunningState } from '#lib/service/state.ts'

/** What was answered with later or no, and would still be worth doing. */
export interface PutOff {
  readonly key: string
  readonly reason: AdviceReason
  /** When it is told again, epoch milliseconds; null where it was declined. */
  readonly until: number | null
}

export const putOffOf = (
  state: RunningState,
  forecast: StationForecast | null,
  now: number,
): readonly PutOff[] =>
  (forecast?.candidates ?? []).flatMap(({ key, reason }): readonly PutOff[] => {
    const told = state.adviceLog.findLast((one) => one.key === key)
    if (!told || told.answeredAt === null) return []
    if (told.answer === 'declined') return [{ key, reason, until: null }]
    const until = instantAt(state, told.answeredAt + PUT_OFF_MINUTES)
    return told.answer === 'put-off' && until > now ? [{ key, reason, until }] : []
  })

/** What can be done about a component that won't last. */
export type More =
  | { readonly can: 'underway'; readonly at: number }
  | { readonly can: 'never' | 'too-late' | 'only-waste' | 'wait' | 'start' }

/** What the forecast says won't last, or is tight; the surest to run out first. */
export interface NotLasting {
  readonly component: string
  readonly lasting: Exclude<Lasting, 'enough'>
  readonly by: ByWhen
  /** Of what was advised against it; null where that wasn't put off. */
  readonly putOff: PutOff | null
  readonly more: More
}

const moreOf = ({ batch, underway }: ComponentForecast): More => {
  const [next] = underway
  if (next) return { can: 'underway', at: next.at }
  if (batch === null) return { can: 'never' }
  return { can: batch.verdict === 'enough' ? 'wait' : batch.verdict }
}

export const notLastingOf = (
  forecast: StationForecast | null,
  putOff: readonly PutOff[],
): readonly NotLasting[] =>
  Object.entries(forecast?.components ?? {})
    .sort(([, one], [, other]) => other.chance - one.chance)
    .flatMap(([component, found]) => {
      const { lasting, by } = found
      if (lasting === 'enough') return []
      const isAbout = ({ reason }: PutOff) =>
        reason.why !== 'safety' && reason.component === component
      return [{ component, lasting, by, putOff: putOff.find(isAbout) ?? null, more: moreOf(found) }]
    })

/** Of what there was some of, and is none left to sell, not by our choice. */
const goneNow = (state: RunningState): readonly string[] =>
  state.station.components
    .map(({ id }) => id)
    .filter(
      (id) =>
        (state.accounts[id]?.loaded ?? 0) > 0 &&
        state.notSelling.component[id] === undefined &&
        levelOf(state, id).portionsLeft <= 0,
    )

export interface Calm {
  /** When the rush that is going on ends, epoch milliseconds; null where there is none. */
  readonly rushUntil: number | null
  /** Components of which none is left to sell. */
  readonly gone: readonly string[]
  /** The others that won't last. */
  readonly notLasting: readonly NotLasting[]
  /** What was answered with later or no, of anything else. */
  readonly putOff: readonly PutOff[]
  /** A forecast says that all others last. */
  readonly isForecast: boolean
}

/** What is open beside the tasks that are told. */
export const calmOfLead = (
  state: RunningState,
  forecast: StationForecast | null,
  now: number,
): Calm => {
  const putOff = putOffOf(state, forecast, now)
  const gone = goneNow(state)
  const notLasting = notLastingOf(forecast, putOff).filter((one) => !gone.includes(one.component))
  return {
    rushUntil: forecast?.rushUntil ?? null,
    gone,
    notLasting,
    putOff: putOff.filter((one) => notLasting.every((other) => other.putOff !== one)),
    isForecast: forecast !== null && Object.keys(forecast.components).length > 0,
  }
}
