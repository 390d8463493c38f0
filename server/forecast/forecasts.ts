/**
 * The newest forecast of each service that is followed: made after what happened, at most once a
 * second, and on a slow tick. What the lead is told by it is appended by the rail like all else.
 */
import type { StationForecast } from '#lib/estimate/station-forecast.ts'
import {
  createServiceForecast,
  type ServiceForecast,
  type ServiceForecastPorts,
} from '#server/forecast/service-forecast.ts'
import type { Rail } from '#server/rail/rail.ts'

export interface ForecastPorts extends Pick<ServiceForecastPorts, 'taught' | 'now' | 'logger'> {
  /** The newest service of each station. */
  readonly currents: () => readonly Rail[]
  readonly onShow: (listener: (rail: Rail) => void) => void
  /** At most one forecast of a service in so many milliseconds; the slow tick. Left away: 1 s and 15 s. */
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
  const { taught, now, logger, atMostEveryMs = AT_MOST_EVERY_MS } = ports
  const listeners: ((forecast: StationForecast) => void)[] = []
  const made = new Map<string, ServiceForecast>()

  const tell = (forecast: StationForecast): void => {
    for (const listener of listeners) listener(forecast)
  }

  /** Those that are followed now; what was known of another before it is dropped. */
  const followed = (): readonly ServiceForecast[] => {
    const rails = ports.currents()
    for (const [service, one] of made) {
      if (rails.includes(one.rail)) continue
      one.close()
      made.delete(service)
    }
    return rails.map((rail) => {
      const known = made.get(rail.service)
      if (known) return known
      const one = createServiceForecast({ rail, taught, now, logger, atMostEveryMs, tell })
      made.set(rail.service, one)
      return one
    })
  }

  ports.onShow((rail) => {
    const shown = followed().find((one) => one.rail === rail)
    shown?.showAnswers()
    shown?.soon()
  })
  const soon = (): void => {
    for (const one of followed()) one.soon()
  }
  const ticking = setInterval(soon, ports.tickMs ?? TICK_MS)
  ticking.unref()
  soon()

  return {
    newest: (service) => made.get(service)?.newest() ?? null,
    onForecast: (listener) => {
      listeners.push(listener)
    },
    close: () => {
      clearInterval(ticking)
      for (const one of made.values()) one.close()
    },
  }
}
