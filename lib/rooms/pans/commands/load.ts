import { z } from 'zod'
import { placeProblem } from '#lib/measure/pan-rules.ts'
import { toppedUp, topUpProblem } from '#lib/needs/top-up.ts'
import { leftOnOthers } from '#lib/rooms/care/facts/soiling.ts'
import { foodFor } from '#lib/rooms/food/facts/invented-readings.ts'
import { isRestAwaited, restOf } from '#lib/rooms/food/facts/rest-of-pan.ts'
import { type Incoming, incoming, incomingFields } from '#lib/rooms/pans/commands/incoming.ts'
import { isNameless } from '#lib/rooms/pans/commands/nameless.ts'
import { notIn } from '#lib/rooms/pans/commands/read-out.ts'
import { earliestThrowOut } from '#lib/safety/time-control.ts'
import { type Decision, happened, refuse } from '#lib/service/commands/decision.ts'
import { defineCommand } from '#lib/service/commands/define.ts'
import { HOT_READING } from '#lib/service/commands/example-parts.ts'
import { idField } from '#lib/service/commands/fields.ts'
import type { HeldFood } from '#lib/service/events/food-event.ts'
import { findBackup, isKeptBack } from '#lib/service/held-stock.ts'
import { noPlace } from '#lib/service/place.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { PanState, RunningState } from '#lib/service/state.ts'
import { componentOf, findPan, pansOf } from '#lib/station/find.ts'
import type { Pan } from '#lib/station/station-document.ts'

const onLine = (
  state: RunningState,
  id: string,
  decide: (pan: PanState, place: Pan) => Decision,
): Decision => {
  const place = findPan(state.station, id)
  const pan = state.pans[id]
  return place && pan ? decide(pan, place) : refuse(noPlace({ what: 'pan', id }))
}

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
const foodOf = ({ batch, from, food, reading, bought, startsClock }: Incoming) => ({
  batch,
  from,
  food,
  reading,
  ...(bought ? { bought } : {}),
  ...(startsClock ? { startsClock } : {}),
})

/** What a clean pan leaves on others; left away where that is nothing. */
const leavesOf = (state: RunningState, pan: string) => {
  const leaves = leftOnOthers(state, pan)
  return leaves.length > 0 ? { leaves } : {}
}

/** What could go into each pan of the line. */
const filled = (state: RunningState, how: 'full' | 'one-portion') =>
  pansOf(state.station).map((pan) => {
    const portion = state.portions[pan.component]?.amount ?? 0
    const amount = how === 'full' ? pan.usualPortions * portion : portion
    return { pan: pan.id, ...foodFor(state, pan.id, amount) }
  })

/** Food into an empty pan. */
export const load = defineCommand({
  type: 'load',
  who: [],
  stages: ['open'],
  schema: {
    pan: idField,
    /** It was emptied and washed: asked of a pan that a foreign scoop went into. */
    washed: z.boolean().optional(),
    ...incomingFields,
  },
  decide: (state, { pan: id, washed, ...told }, { now }) =>
    onLine(state, id, (pan, place) => {
      const misplaced = placedIn(state, told.from, id)
      if (misplaced) return refuse(misplaced)
      const component = componentOf(state.station, place.component)
      const into = { id, component, guarded: false, holds: 0, heldBy: null, isWhole: true }
      if (pan.amount > 0) return refuse({ code: 'pan-not-empty', pan: id })
      if (isKeptBack(state, 'pan', id) || isRestAwaited(state, id, pan))
        return refuse({ code: 'throw-out-first', count: 1 })
      if (pan.soiledBy.length > 0 && washed !== true) return refuse({ code: 'pan-soiled', pan: id })
      const food = incoming(state, told, into, now)
      if ('refusal' in food) return notIn(food)
      const loaded = {
        type: 'panLoaded',
        pan: id,
        amount: food.found.amount,
        ...(washed === true ? { washed, ...leavesOf(state, id) } : {}),
        ...foodOf(food.found),
      } as const
      return happened(loaded)
    }),
  sample: (state) =>
    filled(state, 'full').map((food) => ({
      ...food,
      ...((state.pans[food.pan]?.soiledBy ?? []).length > 0 ? { washed: true } : {}),
    })),
  rules: ['K1', 'K5', 'B3', 'B4', 'B5', 'F33', 'F60', 'F61', 'F90'],
  example: {
    pan: 'pan-rice',
    amount: 2_400_000,
    batch: 'b1',
    reading: HOT_READING,
    initials: 'KT',
  },
  tells: ': into an empty pan; see [loading](#loading)',
})

/**
 * Another pan for the one on the line; what the old one held goes away with it. A rest on a clock, or
 * past its date, is to be thrown out: only food with a name of its own takes its place before somebody
 * has initialled that.
 */
export const changePan = defineCommand({
  type: 'changePan',
  who: [],
  stages: ['open'],
  schema: { pan: idField, ...incomingFields },
  decide: (state, { pan: id, ...told }, { now }) =>
    onLine(state, id, (pan, place) => {
      if (isKeptBack(state, 'pan', id)) return refuse({ code: 'throw-out-first', count: 1 })
      const rest = restOf(state, id, pan, now)
      if (rest && isNameless(told)) return refuse({ code: 'throw-out-first', count: 1 })
      const misplaced = placedIn(state, told.from, id)
      if (misplaced) return refuse(misplaced)
      const component = componentOf(state.station, place.component)
      const into = { id, component, guarded: false, holds: 0, heldBy: null, isWhole: true }
      const food = incoming(state, told, into, now)
      if ('refusal' in food) return notIn(food)
      const changed = {
        type: 'panChanged',
        pan: id,
        takenAway: pan.amount,
        ...(rest ? { rest } : {}),
        ...leavesOf(state, id),
        amount: food.found.amount,
        ...foodOf(food.found),
      } as const
      return happened(changed)
    }),
  sample: (state) => filled(state, 'full'),
  rules: ['K2', 'B10', 'B33', 'K50'],
  example: { pan: 'pan-rice', from: 'back-up-rice', reading: HOT_READING, initials: 'KT' },
  tells: ': a full one for what stands there',
})

const { weighedMg: _gross, heldBy: _own, ...added } = incomingFields

const withSays = (food: HeldFood) => ({ ...food, says: {} })

const withoutSays = ({ heldBy, clock, dateMark, finishedAt, guarded }: HeldFood): HeldFood => ({
  heldBy,
  clock,
  dateMark,
  finishedAt,
  guarded,
})

/** Food added to food: the oldest clock and date govern, and what either declares. */
export const topUp = defineCommand({
  type: 'topUp',
  who: [],
  stages: ['open'],
  schema: { pan: idField, ...added },
  decide: (state, { pan: id, ...told }, { now }) =>
    onLine(state, id, (pan, place) => {
      if (pan.amount <= 0) return refuse({ code: 'nothing-there', id })
      if (isKeptBack(state, 'pan', id) || !pan.food)
        return refuse({ code: 'off-sale', component: place.component })
      const component = componentOf(state.station, place.component)
      const into = {
        id,
        component,
        guarded: false,
        holds: pan.amount,
        heldBy: pan.food.heldBy,
        isWhole: false,
      }
      const food = incoming(state, told, into, now)
      if ('refusal' in food) return notIn(food)
      const { amount, from } = food.found
      const most = from === null ? amount : (state.backupPans[from]?.amount ?? 0)
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
    }),
  sample: (state) => filled(state, 'one-portion'),
  rules: ['B11', 'F20', 'F22', 'S130'],
  example: {
    pan: 'pan-rice',
    amount: 1_200_000,
    batch: 'b1',
    reading: HOT_READING,
    initials: 'KT',
  },
  tells: ': food added to food',
})
