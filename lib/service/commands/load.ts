import { z } from 'zod'
import { componentOf, findPan } from '#lib/menu/find.ts'
import type { Pan } from '#lib/menu/station-document.ts'
import { earliestThrowOut } from '#lib/safety/time-control.ts'
import { toppedUp, topUpProblem } from '#lib/safety/top-up.ts'
import {
  type Circumstances,
  type Decision,
  happened,
  refuse,
  whenOpen,
} from '#lib/service/commands/decision.ts'
import { idField } from '#lib/service/commands/fields.ts'
import {
  type Incoming,
  incoming,
  incomingFields,
  isNameless,
} from '#lib/service/commands/incoming.ts'
import type { HeldFood } from '#lib/service/food-event.ts'
import { findBackup, isKeptBack } from '#lib/service/held-stock.ts'
import { noPlace } from '#lib/service/place.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import { isRestAwaited, restOf } from '#lib/service/rest-of-pan.ts'
import { leftOnOthers } from '#lib/service/soiling.ts'
import type { PanState, RunningState, ServiceState } from '#lib/service/state.ts'
import { placeProblem } from '#lib/stock/pan-rules.ts'

export const loadSchema = z.strictObject({
  type: z.literal('load'),
  pan: idField,
  /** It was emptied and washed: asked of a pan that a foreign scoop went into. */
  washed: z.boolean().optional(),
  ...incomingFields,
})
export const changePanSchema = z.strictObject({
  type: z.literal('changePan'),
  pan: idField,
  ...incomingFields,
})
const { weighedMg: _gross, heldBy: _own, ...added } = incomingFields
export const topUpSchema = z.strictObject({ type: z.literal('topUp'), pan: idField, ...added })

const onLine = (
  state: ServiceState,
  id: string,
  decide: (pan: PanState, state: RunningState, place: Pan) => Decision,
): Decision =>
  whenOpen(state, (running) => {
    const place = findPan(running.station, id)
    const pan = running.pans[id]
    return place && pan ? decide(pan, running, place) : refuse(noPlace({ what: 'pan', id }))
  })

/** Whether a back-up pan fits where another stands. */
const placedIn = (state: RunningState, from: string | undefined, pan: string): Refusal | null => {
  const backup = from === undefined ? undefined : findBackup(state.station, from)
  if (from === undefined || !backup) return null
  const wells = state.station.line.wells.map((well) => ({
    well: well.id,
    pans: well.pans.map(({ id, size }) => ({
      pan: id,
      size: state.containers[id]?.size ?? size,
    })),
  }))
  const into = wells.find((well) => well.pans.some((one) => one.pan === pan))?.well ?? ''
  const problem = placeProblem(wells, into, { pan: from, size: backup.size }, pan)
  return problem ? { code: 'wrong-place', pan, problem } : null
}

/** What an event says of the food; left away where an older log couldn't say it. */
const foodOf = ({ batch, from, food, reading, bought }: Incoming) => ({
  batch,
  from,
  food,
  reading,
  ...(bought ? { bought } : {}),
})

/** What a clean pan leaves on others; left away where that is nothing. */
const leavesOf = (state: RunningState, pan: string) => {
  const leaves = leftOnOthers(state, pan)
  return leaves.length > 0 ? { leaves } : {}
}

export const decideLoad = (
  state: ServiceState,
  command: z.infer<typeof loadSchema>,
  circumstances: Circumstances,
): Decision =>
  onLine(state, command.pan, (pan, running, place) => {
    const { type: _, pan: id, washed, ...told } = command
    const misplaced = placedIn(running, told.from, id)
    if (misplaced) return refuse(misplaced)
    const component = componentOf(running.station, place.component)
    const into = { id, component, guarded: false, holds: 0, heldBy: null, isWhole: true }
    if (pan.amount > 0) return refuse({ code: 'pan-not-empty', pan: id })
    if (isKeptBack(running, 'pan', id) || isRestAwaited(running, id, pan))
      return refuse({ code: 'throw-out-first', count: 1 })
    if (pan.soiledBy.length > 0 && washed !== true) return refuse({ code: 'pan-soiled', pan: id })
    const food = incoming(running, told, into, circumstances.now)
    if ('refusal' in food) return refuse(food.refusal)
    const loaded = {
      type: 'panLoaded',
      pan: id,
      amount: food.found.amount,
      ...(washed === true ? { washed, ...leavesOf(running, id) } : {}),
      ...foodOf(food.found),
    } as const
    return happened(loaded)
  })

/**
 * Another pan for the one on the line; what the old one held goes away with it. A rest on a clock, or
 * past its date, is to be thrown out: only food with a name of its own takes its place before somebody
 * has initialled that.
 */
export const decideChangePan = (
  state: ServiceState,
  command: z.infer<typeof changePanSchema>,
  circumstances: Circumstances,
): Decision =>
  onLine(state, command.pan, (pan, running, place) => {
    const { type: _, pan: id, ...told } = command
    if (isKeptBack(running, 'pan', id)) return refuse({ code: 'throw-out-first', count: 1 })
    const rest = restOf(running, id, pan, circumstances.now)
    if (rest && isNameless(told)) return refuse({ code: 'throw-out-first', count: 1 })
    const misplaced = placedIn(running, told.from, id)
    if (misplaced) return refuse(misplaced)
    const component = componentOf(running.station, place.component)
    const into = { id, component, guarded: false, holds: 0, heldBy: null, isWhole: true }
    const food = incoming(running, told, into, circumstances.now)
    if ('refusal' in food) return refuse(food.refusal)
    const changed = {
      type: 'panChanged',
      pan: id,
      takenAway: pan.amount,
      ...(rest ? { rest } : {}),
      ...leavesOf(running, id),
      amount: food.found.amount,
      ...foodOf(food.found),
    } as const
    return happened(changed)
  })

const withSays = (food: HeldFood) => ({ ...food, says: {} })

const withoutSays = ({ heldBy, clock, dateMark, finishedAt, guarded }: HeldFood): HeldFood => ({
  heldBy,
  clock,
  dateMark,
  finishedAt,
  guarded,
})

/** Food added to food: the oldest clock and date govern, and what either declares. */
export const decideTopUp = (
  state: ServiceState,
  command: z.infer<typeof topUpSchema>,
  circumstances: Circumstances,
): Decision =>
  onLine(state, command.pan, (pan, running, place) => {
    const { now } = circumstances
    const { type: _, pan: id, ...told } = command
    if (pan.amount <= 0) return refuse({ code: 'nothing-there', id })
    if (isKeptBack(running, 'pan', id) || !pan.food)
      return refuse({ code: 'off-sale', component: place.component })
    const component = componentOf(running.station, place.component)
    const into = {
      id,
      component,
      guarded: false,
      holds: pan.amount,
      heldBy: pan.food.heldBy,
      isWhole: false,
    }
    const food = incoming(running, told, into, now)
    if ('refusal' in food) return refuse(food.refusal)
    const { amount, from } = food.found
    const most = from === null ? amount : (running.backupPans[from]?.amount ?? 0)
    if (from !== null && amount > most)
      return refuse({ code: 'more-than-batch', batch: from, most })
    const why = topUpProblem(withSays(pan.food), withSays(food.found.food), now)
    if (why) return refuse({ code: 'cannot-top-up', pan: id, why })
    const both = toppedUp(withSays(pan.food), withSays(food.found.food))
    const dayEndsAt = earliestThrowOut([
      pan.food.dayEndsAt ?? null,
      food.found.food.dayEndsAt ?? null,
    ])
    const event = {
      type: 'panToppedUp',
      pan: id,
      amount,
      ...foodOf(food.found),
      food: { ...withoutSays(both), ...(dayEndsAt === null ? {} : { dayEndsAt }) },
    } as const
    return happened(event)
  })
