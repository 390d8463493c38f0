import { tell } from '#lib/estimate/advice.ts'
import type { Suggestion } from '#lib/estimate/station-forecast.ts'
import type { StockEvent } from '#lib/service/events/stock-event.ts'
import { minuteAt } from '#lib/service/minute.ts'
import type { RunningState } from '#lib/service/state.ts'

/**
 * What is told at a moment and what lapsed, as events; none where nothing changes. While a jump of
 * the clock isn't confirmed nothing is.
 */
export const adviceEvents = (
  state: RunningState,
  candidates: readonly Suggestion[],
  now: number,
  isRush: boolean,
): readonly StockEvent[] => {
  if (state.stage !== 'open' || state.clockJump !== null) return []
  const before = state.adviceLog
  const after = tell(before, candidates, minuteAt(state, now), isRush)
  const lapsed = after
    .slice(0, before.length)
    .flatMap((one, index): StockEvent[] =>
      one.answer === 'lapsed' && before[index]?.answer === 'open'
        ? [{ type: 'adviceLapsed', key: one.key }]
        : [],
    )
  const told = after.slice(before.length).flatMap(({ key }): StockEvent[] => {
    const found = candidates.find((one) => one.key === key)
    if (!found) return []
    const { kind, saves, reason } = found
    return [{ type: 'adviceTold', key, kind, saves, reason }]
  })
  return [...lapsed, ...told]
}
