/** The forecasts of one service: made after what happened, at most once in a while. */
import type { Logger } from 'pino'
import type { PastTaught } from '#lib/estimate/demand-history.ts'
import type { StationForecast } from '#lib/estimate/station-forecast.ts'
import { adviceEvents } from '#lib/rooms/advice/facts/advice-events.ts'
import { forecastNow, withDoNext } from '#lib/rooms/advice/facts/forecast-now.ts'
import { isRunning, type RunningState } from '#lib/service/state.ts'
import type { Rail } from '#server/rail/rail.ts'

export interface ServiceForecastPorts {
  readonly rail: Rail
  /** What past services taught, for this one. */
  readonly taught: (state: RunningState) => PastTaught
  readonly now: () => number
  readonly logger: Logger
  /** At most one forecast in so many milliseconds. */
  readonly atMostEveryMs: number
  readonly tell: (forecast: StationForecast) => void
}

export interface ServiceForecast {
  readonly rail: Rail
  /** Null before the first, and once the service is closed. */
  newest(): StationForecast | null
  /** One is due: it is made as soon as it may be. */
  soon(): void
  /** What was just told or answered stands on the screens at once; the figures follow. */
  showAnswers(): void
  close(): void
}

export const createServiceForecast = (ports: ServiceForecastPorts): ServiceForecast => {
  const { rail, now, logger, tell } = ports
  let newest: StationForecast | null = null
  let taught: PastTaught | null = null
  let madeAt = Number.NEGATIVE_INFINITY
  let timer: NodeJS.Timeout | undefined
  let closed = false

  const tellBy = (forecast: StationForecast): void => {
    const isRush = forecast.rushUntil !== null
    const events = (state: RunningState) =>
      adviceEvents(state, forecast.candidates, Math.max(forecast.at, state.at), isRush)
    const state = rail.state()
    if (isRunning(state) && events(state).length > 0) rail.note(events)
  }

  const make = (): void => {
    const state = rail.state()
    if (!isRunning(state) || state.stage !== 'open') {
      newest = null
      return
    }
    taught ??= ports.taught(state)
    newest = forecastNow(state, taught, {
      position: rail.position(),
      now: Math.max(now(), state.at),
      firstBefore: newest?.doNext[0]?.key ?? null,
    })
    tell(newest)
    tellBy(newest)
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

  return {
    rail,
    newest: () => newest,
    soon: () => {
      if (timer !== undefined || closed) return
      const wait = Math.max(0, madeAt + ports.atMostEveryMs - performance.now())
      timer = setTimeout(makeSafely, wait).unref()
    },
    showAnswers: () => {
      const state = rail.state()
      if (!newest || state.stage !== 'open') return
      const next = withDoNext(newest, state.adviceLog, newest.doNext[0]?.key ?? null)
      const isSame =
        next.doNext.map(({ key }) => key).join() === newest.doNext.map(({ key }) => key).join()
      if (isSame) return
      newest = next
      tell(next)
    },
    close: () => {
      closed = true
      clearTimeout(timer)
    },
  }
}
