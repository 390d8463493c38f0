import { pino } from 'pino'
import { afterEach, beforeEach, describe, expect, onTestFinished, test, vi } from 'vitest'
import type { StationForecast } from '#lib/estimate/station-forecast.ts'
import { pastTaught } from '#lib/rooms/day/facts/past-services.ts'
import type { Recorded, ServiceEvent } from '#lib/service/events/event.ts'
import { isRunning, type RunningState } from '#lib/service/state.ts'
import { evolve } from '#lib/spine/evolve.ts'
import { createForecasts, type ForecastPorts } from '#server/forecast/forecasts.ts'
import type { Note } from '#server/rail/batch.ts'
import type { Rail } from '#server/rail/rail.ts'
import {
  choice,
  give,
  MINUTE,
  OPENED,
  order,
  type Stocked,
  stocked,
  stockedStation,
} from '#tests/support/stock.ts'

const AT_MOST_EVERY_MS = 40

/** A rail that folds what is noted at once, and says so. */
const createRail = (told: Stocked) => {
  let state: RunningState = told.state
  let position = told.events.length
  const noted: ServiceEvent[] = []
  const listeners: ((rail: Rail) => void)[] = []
  const happen = (events: readonly ServiceEvent[], command: string | null): void => {
    for (const event of events) {
      position += 1
      const recorded: Recorded = { ...event, position, at: state.at, command }
      const next = evolve(state, recorded)
      if (isRunning(next)) state = next
    }
    for (const listener of listeners) listener(rail)
  }
  const rail: Rail = {
    service: state.service,
    state: () => state,
    position: () => position,
    eventsAfter: () => null,
    submit: () => Promise.reject(new Error('nobody sends')),
    note: (make: Note) => {
      setImmediate(() => {
        const events = state.stage === 'open' ? make(state, state.at) : []
        noted.push(...events)
        happen(events, null)
      })
    },
    look: () => undefined,
    onShow: () => undefined,
    idle: () => Promise.resolve(),
    close: () => undefined,
  }
  return {
    rail,
    noted,
    listen: (listener: (rail: Rail) => void) => listeners.push(listener),
    happen,
    show: () => happen([], 'c'),
    close: () => {
      state = { ...state, stage: 'closed' }
      happen([], 'c')
    },
  }
}

const watch = (told: Stocked, over: Partial<ForecastPorts> = {}) => {
  const room = createRail(told)
  const made: StationForecast[] = []
  const logged: string[] = []
  const forecasts = createForecasts({
    currents: () => [room.rail],
    onShow: (listener) => room.listen(listener),
    taught: () => pastTaught([], stockedStation, 'real'),
    now: () => OPENED + 12 * MINUTE,
    logger: pino({ level: 'trace' }, { write: (line) => logged.push(line) }),
    atMostEveryMs: AT_MOST_EVERY_MS,
    tickMs: 60_000,
    ...over,
  })
  forecasts.onForecast((forecast) => made.push(forecast))
  onTestFinished(() => forecasts.close())
  return { ...room, forecasts, made, logged }
}

/** On a clock of the test's own: a busy machine changes nothing. */
const pause = (ms: number): Promise<unknown> => vi.advanceTimersByTimeAsync(ms)

const until = async (isSo: () => boolean): Promise<void> => {
  for (let turn = 0; turn < 400 && !isSo(); turn += 1) await pause(5)
}

beforeEach(() => {
  vi.useFakeTimers({
    toFake: [
      'setTimeout',
      'clearTimeout',
      'setInterval',
      'clearInterval',
      'setImmediate',
      'performance',
    ],
  })
})
afterEach(() => {
  vi.useRealTimers()
})

const tight = (): Stocked =>
  Array.from({ length: 4 }).reduce<Stocked>(
    (so, _, index) => give(so, 5 + index, order(choice('garden-chicken'))),
    stocked({ chicken: 8 }),
  )

describe('the newest forecast', () => {
  test('[R30] is made of the service that is open, from its newest state', async () => {
    const { forecasts, made } = watch(tight())
    await until(() => made.length > 0)
    expect(forecasts.newest('s-lunch')).toBe(made.at(-1))
    expect(forecasts.newest('s-other')).toBeNull()
    expect(made[0]).toMatchObject({ service: 's-lunch', position: tight().events.length })
  })

  test('[R30] is made at most so often, whatever happens, and once more after it', async () => {
    const { made, show } = watch(stocked())
    await until(() => made.length > 0)
    const before = made.length
    for (let index = 0; index < 20; index += 1) show()
    expect(made.length).toBe(before)
    await until(() => made.length > before)
    await pause(3 * AT_MOST_EVERY_MS)
    expect(made.length).toBe(before + 1)
  })

  test('[R30] is made on a slow tick where nothing happens', async () => {
    const { made } = watch(stocked(), { tickMs: 2 * AT_MOST_EVERY_MS })
    await until(() => made.length >= 3)
    expect(made.length).toBeGreaterThanOrEqual(3)
  })

  test('[R31] tells the lead by events of no command, once', async () => {
    const { made, noted, show } = watch(tight())
    await until(() => made.some(({ doNext }) => doNext.length > 0))
    expect(noted.map(({ type }) => type)).toContain('adviceTold')
    const told = noted.flatMap((event) => (event.type === 'adviceTold' ? [event.key] : []))
    expect(told).toContain('start-batch chicken')
    expect(new Set(told).size).toBe(told.length)
    show()
    await pause(3 * AT_MOST_EVERY_MS)
    expect(noted.filter(({ type }) => type === 'adviceTold')).toHaveLength(told.length)
    expect(
      made
        .at(-1)
        ?.doNext.map(({ key }) => key)
        .sort(),
    ).toEqual([...told].sort())
  })

  test('[R31] is without what was answered, at once', async () => {
    const { made, happen } = watch(tight(), { atMostEveryMs: 60_000 })
    await until(() => made.some(({ doNext }) => doNext.length > 0))
    const before = made.length
    happen([{ type: 'adviceAnswered', key: 'start-batch chicken', answer: 'done' }], 'c')
    expect(made).toHaveLength(before + 1)
    expect(made.at(-1)?.doNext.map(({ key }) => key)).not.toContain('start-batch chicken')
  })

  test('[R30] is none once the service has closed, nor after the end', async () => {
    const { forecasts, made, close } = watch(stocked())
    await until(() => made.length > 0)
    close()
    await until(() => forecasts.newest('s-lunch') === null)
    expect(forecasts.newest('s-lunch')).toBeNull()
    const over = watch(stocked())
    over.forecasts.close()
    await pause(3 * AT_MOST_EVERY_MS)
    expect(over.made).toEqual([])
  })

  test('[R32] that fails is logged, and the one before stays', async () => {
    let fails = false
    const { forecasts, made, logged, show } = watch(stocked(), {
      now: () => {
        if (fails) throw new Error('no clock')
        return OPENED + 12 * MINUTE
      },
    })
    await until(() => made.length > 0)
    fails = true
    show()
    await until(() => logged.some((line) => line.includes('no forecast was made')))
    expect(forecasts.newest('s-lunch')).toBe(made.at(-1))
  })

  test('[R30] is made of each station’s open service, each in its own time', async () => {
    const [wraps, soup] = [createRail(stocked()), createRail(stocked())]
    const other: Rail = { ...soup.rail, service: 's-soup' }
    const made: string[] = []
    const rails: Rail[] = [wraps.rail]
    const forecasts = createForecasts({
      currents: () => rails,
      onShow: (listener) => {
        wraps.listen(listener)
        soup.listen(() => listener(other))
      },
      taught: () => pastTaught([], stockedStation, 'real'),
      now: () => OPENED + 12 * MINUTE,
      logger: pino({ level: 'silent' }),
      atMostEveryMs: AT_MOST_EVERY_MS,
      tickMs: 60_000,
    })
    onTestFinished(() => forecasts.close())
    forecasts.onForecast(({ position }) => made.push(String(position)))
    await until(() => made.length > 0)
    expect(forecasts.newest('s-soup')).toBeNull()
    rails.push(other)
    soup.show()
    await until(() => forecasts.newest('s-soup') !== null)
    expect(forecasts.newest('s-lunch')).not.toBeNull()
    rails.shift()
    soup.show()
    expect(forecasts.newest('s-lunch')).toBeNull()
  })
})
