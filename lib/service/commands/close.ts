import { z } from 'zod'
import {
  type Circumstances,
  type Decision,
  happened,
  refuse,
  whenOpen,
} from '#lib/service/commands/decision.ts'
import { coolingOf } from '#lib/service/food-now.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import { allStock } from '#lib/service/held-stock.ts'
import type { RunningState, ServiceState } from '#lib/service/state.ts'
import { openBuilds } from '#lib/service/tickets.ts'

export const closeSchema = z.strictObject({ type: z.literal('close') })
export const confirmClockSchema = z.strictObject({ type: z.literal('confirmClock') })

/** Food that somebody has to resolve or to initial first. */
const boundFood = (state: RunningState): number =>
  Object.keys(state.toThrowOut).length +
  allStock(state).filter(({ stock }) => stock.offSale !== null).length +
  Object.values(state.batches).filter((one) => one.offSale !== null).length

/** After the close nobody could record a reading of it any more. */
const isCooling = (state: RunningState, batch: BatchState, now: number): boolean => {
  if (batch.thrownOutAt !== null) return false
  const cooling = coolingOf(state.station, batch, now)
  return cooling?.state === 'first-stage' || cooling?.state === 'second-stage'
}

/**
 * Closing leaves no guest standing, every build is handed over or cancelled, every guest found,
 * and answered for what was handed over; and it leaves no food behind that is off sale, to be thrown out, or cooling.
 */
export const decideClose = (state: ServiceState, { now }: Circumstances): Decision =>
  whenOpen(state, (running) => {
    const count = openBuilds(running).length
    if (count > 0) return refuse({ code: 'builds-open', count })
    const toFind = Object.keys(running.toFind).length
    if (toFind > 0) return refuse({ code: 'guests-to-find', count: toFind })
    const untold = Object.keys(running.toTell).length
    if (untold > 0) return refuse({ code: 'handed-over-first', count: untold })
    const bound = boundFood(running)
    if (bound > 0) return refuse({ code: 'throw-out-first', count: bound })
    const cooling = Object.entries(running.batches).find(([, one]) => isCooling(running, one, now))
    return cooling
      ? refuse({ code: 'still-cooling', batch: cooling[0] })
      : happened({ type: 'serviceClosed', why: 'by-hand' })
  })

export const decideConfirmClock = (state: ServiceState): Decision =>
  whenOpen(state, (running) =>
    running.clockJump === null
      ? refuse({ code: 'already-so' })
      : happened({ type: 'clockConfirmed' }),
  )
