/** Who starts batches: nobody, a fixed rule, or a lead who follows our advice. */

import type { AdviceReason } from '#lib/estimate/advice-reason.ts'
import type { PastTaught } from '#lib/estimate/demand-history.ts'
import type { StationForecast } from '#lib/estimate/station-forecast.ts'
import { adviceEvents } from '#lib/rooms/advice/facts/advice-events.ts'
import { forecastNow } from '#lib/rooms/advice/facts/forecast-now.ts'
import type { Chance } from '#tests/simulate/chance.ts'
import type { Room } from '#tests/simulate/room.ts'
import { scenario } from '#tests/simulate/scenario.ts'
import { behindReally, type Stock } from '#tests/simulate/stock.ts'
import { readTemperatures } from '#tests/simulate/watch.ts'

export type Policy = 'nothing' | 'quarter' | 'advice'

export interface Lead {
  readonly look: (minute: number) => void
  readonly batches: () => number
}

type Later = (minute: number, act: (minute: number) => void) => void

const QUARTER = 0.25

const quarterRule = (room: Room, stock: Stock): Lead => {
  let batches = 0
  return {
    look: (minute) => {
      readTemperatures(room, minute)
      for (const food of stock.foods) {
        const { facts, real, underway } = food
        const { remake, usualPortions } = facts
        if (!remake || underway > 0 || minute + remake.minutes >= scenario.closes) continue
        if (real + behindReally(food) > QUARTER * usualPortions) continue
        batches += 1
        const loads = Math.max(1, Math.round(usualPortions / remake.portionsPerLoad))
        stock.startBatch(facts.id, loads, minute)
      }
    },
    batches: () => batches,
  }
}

/** The lead does what is told after a short while; now and then it is put off. */
const PUTS_OFF = 0.05

/** As the server tells it: the newest forecast, what it tells, and the lead's answers. */
const adviceFollower = (
  room: Room,
  stock: Stock,
  taught: PastTaught,
  later: Later,
  chance: Chance,
): Lead => {
  let newest: StationForecast | null = null
  let batches = 0
  const act = (reason: AdviceReason, minute: number): void => {
    switch (reason.why) {
      case 'safety':
        readTemperatures(room, minute)
        break
      case 'sold-out':
        stock.refill(minute)
        break
      case 'measure':
        stock.read(reason.component, 'eye-check', minute)
        break
      case 'keep':
        if (reason.keep > 0)
          room.must(minute, {
            type: 'keep',
            component: reason.component,
            portions: reason.keep,
            for: reason.forItems,
          })
        break
      case 'start-batch': {
        const now = newest?.components[reason.component]?.batch
        batches += 1
        stock.startBatch(reason.component, now && now.loads > 0 ? now.loads : reason.loads, minute)
      }
    }
  }
  const answer = (key: string, reason: AdviceReason, minute: number): void => {
    if (room.state().adviceLog.findLast((one) => one.key === key)?.answer !== 'open') return
    const putsOff = chance.happens(PUTS_OFF)
    room.must(minute, { type: 'answerAdvice', key, answer: putsOff ? 'put-off' : 'done' })
    if (!putsOff) act(reason, minute)
  }
  return {
    look: (minute) => {
      const now = room.instant(minute)
      const forecast = forecastNow(room.state(), taught, {
        position: room.position(),
        now,
        firstBefore: newest?.doNext[0]?.key ?? null,
      })
      newest = forecast
      const events = room.note(minute, (state) =>
        adviceEvents(state, forecast.candidates, now, forecast.rushUntil !== null),
      )
      for (const event of events)
        if (event.type === 'adviceTold')
          later(minute + 0.3 + 0.7 * chance.uniform(), (then) =>
            answer(event.key, event.reason, then),
          )
    },
    batches: () => batches,
  }
}

export const createLead = (
  policy: Policy,
  room: Room,
  stock: Stock,
  taught: PastTaught,
  later: Later,
  chance: Chance,
): Lead => {
  switch (policy) {
    case 'nothing':
      return { look: (minute) => readTemperatures(room, minute), batches: () => 0 }
    case 'quarter':
      return quarterRule(room, stock)
    case 'advice':
      return adviceFollower(room, stock, taught, later, chance)
  }
}
