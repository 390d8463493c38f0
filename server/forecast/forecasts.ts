/**
 * The newest forecast of the service that is followed: made after what happened, at most once a
 * second, and on a slow tick. What the lead is told by it is appended by the rail like all else.
 */
import type { Logger } from 'pino'
import type { PastTaught } from '#lib/estimate/demand-history.ts'
import type { StationForecast } from '#lib/estimate/station-forecast.ts'
import { adviceEvents } from '#lib/rooms/advice/facts/advice-events.ts'
import { forecastNow, withDoNext } from '#lib/rooms/advice/facts/forecast-now.ts'
import { isRunning, type RunningState } from '#lib/service/state.ts'
import type { Rail } from '#server/rail/rail.ts'

export interface ForecastPorts {
  readonly current: () => Rail | null
  readonly onShow: (listener: (rail: Rail) => void) => void
  /** What past services taught, for this one. */
  readonly taught: (state: RunningState) => PastTaught
  readonly now: () => number
  readonly logger: Logger
  /** At most one forecast in so many milliseconds; the slow tick. Left away: 1 s and 15 s. */
  readonly atMostEveryMs?: number
  readonly tickMs?: number
}

export interface Forecasts {
  /** The newest of a service; null where there is none, or it is closed. */
  newest(service: string): StationForecast | null
  onForecast(listener: (forecast: StationForecast) => void): void
  close(): void
}

const AT_MOST_EVERY_MS = 1_000
const TICK_MS = 15_000

export const createForecasts = (ports: ForecastPorts): Forecasts => {
  const { now, logger } = ports
  const atMostEveryMs = ports.atMostEveryMs ?? AT_MOST_EVERY_MS
  const listeners: ((forecast: StationForecast) => void)[] = []
  let newest: StationForecast | null = null
  let taught: { readonly service: string; readonly past: PastTaught } | null = null
  let madeAt = Number.NEGATIVE_INFINITY
  let timer: NodeJS.Timeout | undefined
  let closed = false

  const taughtFor = (state: RunningState): PastTaught => {
    if (taught?.service !== state.service)
      taught = { service: state.service, past: ports.taught(state) }
    return taught.past
  }

  const tellBy = (rail: Rail, forecast: StationForecast): void => {
    const isRush = forecast.rushUntil !== null
    const events = (state: RunningState) =>
      adviceEvents(state, forecast.candidates, Math.max(forecast.at, state.at), isRush)
    const state = rail.state()
    if (isRunning(state) && events(state).length > 0) rail.note(events)
  }

  const make = (): void => {
    const rail = ports.current()
    const state = rail?.state()
    if (!rail || !state || !isRunning(state) || state.stage !== 'open') {
      newest = null
      return
    }
    const before = newest?.service === state.service ? newest : null
    newest = forecastNow(state, taughtFor(state), {
      position: rail.position(),
      now: Math.max(now(), state.at),
      firstBefore: before?.doNext[0]?.key ?? null,
    })
    for (const listener of listeners) listener(newest)
    tellBy(rail, newest)
  }

  const makeSafely = (): void => {
    clearTimeout(timer)
    timer = undefined
    if (closed) return
    madeAt = performance.now()
    try {
      make()
    } catch (error) {
      // Nothing that is sold or made hangs on it: the screens keep the one before, and its age.
      logger.error({ err: error }, 'no forecast was made')
    }
  }

  const soon = (): void => {
    if (timer !== undefined || closed) return
    const wait = Math.max(0, madeAt + atMostEveryMs - performance.now())
    timer = setTimeout(makeSafely, wait).unref()
  }

  /** What was just told or answered stands on the screens at once; the figures follow within a second. */
  const showAnswers = (rail: Rail): void => {
    const state = rail.state()
    if (!newest || newest.service !== rail.service || state.stage !== 'open') return
    const next = withDoNext(newest, state.adviceLog, newest.doNext[0]?.key ?? null)
    const isSame =
      next.doNext.map(({ key }) => key).join() === newest.doNext.map(({ key }) => key).join()
    if (isSame) return
    newest = next
    for (const listener of listeners) listener(next)
  }

  ports.onShow((rail) => {
    if (rail !== ports.current()) return
    showAnswers(rail)
    soon()
  })
  const ticking = setInterval(soon, ports.tickMs ?? TICK_MS)
  ticking.unref()
  soon()

  return {
    newest: (service) => (newest?.service === service ? newest : null),
    onForecast: (listener) => {
      listeners.push(listener)
    },
    close: () => {
      closed = true
      clearTimeout(timer)
      clearInterval(ticking)
    },
  }
}
