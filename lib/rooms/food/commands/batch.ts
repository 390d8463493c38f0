import { z } from 'zod'
import { firstDayOf, toldMark } from '#lib/rooms/food/facts/dated.ts'
import { needsBatch } from '#lib/rooms/food/facts/food-now.ts'
import { cookedReading, INVENTED_INITIALS } from '#lib/rooms/food/facts/invented-readings.ts'
import { takenHeatReading } from '#lib/rooms/food/facts/reading.ts'
import { cookedTo } from '#lib/safety/cooking.ts'
import { earlierStamp } from '#lib/safety/date-stamp.ts'
import { batchTimesProblem, type LoadProblem } from '#lib/safety/load.ts'
import { momentProblem } from '#lib/safety/readings.ts'
import { freeBatchId, isUsedUp, loadsToCome, readOfLoad } from '#lib/service/batch-loads.ts'
import { loadsRead } from '#lib/service/batch-read.ts'
import { type Decision, happened, refuse } from '#lib/service/commands/decision.ts'
import { defineCommand } from '#lib/service/commands/define.ts'
import { HEAT_READING } from '#lib/service/commands/example-parts.ts'
import { amountField, idField } from '#lib/service/commands/fields.ts'
import {
  dateFields,
  heatReadingField,
  initialsField,
  momentField,
} from '#lib/service/commands/food-fields.ts'
import { foodKindOf, limitsOf } from '#lib/service/food-limits.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import { boundAt } from '#lib/service/held-stock.ts'
import { findBatch, noPlace } from '#lib/service/place.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { RunningState } from '#lib/service/state.ts'
import { componentOf, findComponent } from '#lib/station/find.ts'

/** More of one making is a slip of the finger: a ton, or so many pieces. */
const MOST_IN_BATCH = 1_000_000_000

/** Decides on a batch that there is and that wasn't thrown out. */
export const withBatch = (
  state: RunningState,
  id: string,
  decide: (batch: BatchState) => Decision,
): Decision => {
  const batch = findBatch(state, id)
  if (!batch) return refuse(noPlace({ what: 'batch', id }))
  if (batch.thrownOutAt !== null || boundAt(state, 'batch', id) !== undefined)
    return refuse({
      code: 'cannot-load',
      component: batch.component,
      problem: { code: 'thrown-out' },
    })
  return decide(batch)
}

/**
 * The same of a batch of which something is left or still to be made: a reading of an empty pot would be
 * believed of food that went on the line.
 */
export const withFoodOf = (
  state: RunningState,
  id: string,
  decide: (batch: BatchState) => Decision,
): Decision =>
  withBatch(state, id, (batch) =>
    isUsedUp(batch) ? refuse({ code: 'nothing-there', id: batch.component }) : decide(batch),
  )

export const startBatch = defineCommand({
  type: 'startBatch',
  who: [],
  stages: ['planned', 'open'],
  schema: {
    /** Its id, where a screen gives one; else the next of b1, b2, b3 ... */
    batch: z
      .string()
      .regex(/^[a-z][a-z0-9-]{0,39}$/)
      .optional(),
    component: idField,
    loads: z.int().min(1).max(20),
    startedAt: momentField.optional(),
  },
  decide: (state, command, { now }) => {
    const { component, loads } = command
    if (!findComponent(state.station, component))
      return refuse({ code: 'unknown', what: 'component', id: component })
    const batch = command.batch ?? freeBatchId(state)
    if (state.batches[batch]) return refuse({ code: 'already-so' })
    const startedAt = command.startedAt ?? now
    const problem = momentProblem(startedAt, null, now)
    if (problem) return refuse({ code: 'wrong-moment', problem })
    return happened({ type: 'batchStarted', batch, component, loads, startedAt })
  },
  sample: ({ station }) =>
    station.components.filter(needsBatch).map(({ id }) => ({ component: id, loads: 1 })),
  rules: ['B1', 'F6'],
  example: { component: 'rice', loads: 2, startedAt: 1_795_601_000_000 },
  tells: ': its id is the next of b1, b2 …, or the command’s own `batch`',
})

/** A reading that fails is recorded too: it says why the batch isn't loaded yet. */
export const recordCooking = defineCommand({
  type: 'recordCooking',
  who: [],
  stages: ['planned', 'open'],
  schema: { batch: idField, reading: heatReadingField, initials: initialsField },
  decide: (state, command, { now }) =>
    withFoodOf(state, command.batch, (batch) => {
      const component = findComponent(state.station, batch.component)
      if (!component) return refuse({ code: 'unknown', what: 'component', id: batch.component })
      // It waits, and is read as what waits: cooking reads nothing good again.
      if (batch.offSale) return refuse({ code: 'off-sale', component: batch.component })
      if (batch.finishedAt !== null && batch.cooked && loadsToCome(batch) === 0)
        return refuse({ code: 'already-so' })
      const taken = takenHeatReading(state, command.reading, {
        context: 'cooking',
        initials: command.initials,
        now,
        newestAt: Math.max(batch.startedAt, batch.cooking.at(-1)?.at ?? 0),
      })
      if ('refusal' in taken) return taken
      const readings = [...readOfLoad(batch), taken.reading]
      const cooking = { kind: foodKindOf(component), cookedIn: component.food.cookedIn, readings }
      const met = cookedTo(cooking, limitsOf(state.station))?.met ?? true
      return happened({ type: 'batchCooked', batch: command.batch, reading: taken.reading, met })
    }),
  sample: (state) =>
    Object.entries(state.batches).flatMap(([batch, { component }]) => {
      const reading = cookedReading(state.station, componentOf(state.station, component))
      return reading ? [{ batch, reading, initials: INVENTED_INITIALS }] : []
    }),
  rules: ['B2', 'B36', 'F7', 'F9'],
  example: { batch: 'b1', reading: HEAT_READING, initials: 'KT' },
  tells: ': see [readings](#readings)',
})

/** Why what was read of it isn't enough for so many loads; null where it is. */
const whyNotCooked = (state: RunningState, batch: BatchState, loads: number): Refusal | null => {
  const component = componentOf(state.station, batch.component)
  const { cookedIn } = component.food
  const cooking = { kind: foodKindOf(component), cookedIn, readings: readOfLoad(batch) }
  const cooked = cookedTo(cooking, limitsOf(state.station))
  if (cooked === null) return null
  const not = (problem: LoadProblem): Refusal => ({
    code: 'cannot-load',
    component: component.id,
    problem,
  })
  if (!cooked.met) return not({ code: 'not-cooked', why: cooked.why })
  const lacking = loads - loadsRead(state.station, batch)
  return lacking > 0 ? not({ code: 'loads-unread', lacking }) : null
}

/**
 * Its loads may be finished one after the other: the amount is what those that are gave in all. Said
 * again, it corrects that. What was read and isn't cooked through goes on cooking: it isn't finished.
 */
export const finishBatch = defineCommand({
  type: 'finishBatch',
  who: [],
  stages: ['planned', 'open'],
  schema: {
    batch: idField,
    /** What it gave, in the component's unit. */
    amount: amountField,
    /** Of its loads, so many are finished by now; all of them where left away. */
    loads: z.int().min(1).max(20).optional(),
    /** Somebody weighed or counted it; else it is thought to be as usual. */
    measured: z.literal(true).optional(),
    finishedAt: momentField.optional(),
    ...dateFields,
  },
  decide: (state, command, { now }) =>
    withBatch(state, command.batch, (batch) => {
      const { amount, loads = batch.loads } = command
      const isMore = loads > batch.loadsDone
      const finishedAt = command.finishedAt ?? (isMore ? now : (batch.finishedAt ?? now))
      const problem = batchTimesProblem(batch.startedAt, finishedAt, now)
      if (problem) return refuse({ code: 'wrong-moment', problem })
      const most = MOST_IN_BATCH
      if (!Number.isSafeInteger(amount) || amount < Math.max(1, batch.loaded) || amount > most)
        return refuse({ code: 'absurd-amount', pan: batch.component, most })
      if (loads > batch.loads)
        return refuse({ code: 'absurd-amount', pan: batch.component, most: batch.loads })
      // Of several loads each has a reading of its own; a single one has it before it is loaded.
      const more = loads - batch.loadsDone
      const isLoad = more > 0 && batch.loads > 1
      const isAsked = isLoad || (readOfLoad(batch).length > 0 && !batch.cooked)
      const failed = isAsked ? whyNotCooked(state, batch, more) : null
      if (failed) return refuse(failed)
      const preparedOn = firstDayOf(state, batch, command, now)
      const told = toldMark(state, { ...command, preparedOn }, now)
      if ('refusal' in told) return told
      // Said again, a date only moves to the earlier.
      const mark = earlierStamp(told.mark, batch.dateMark)
      if (
        batch.finishedAt === finishedAt &&
        batch.amount === amount &&
        batch.loadsDone === loads &&
        batch.measured === command.measured &&
        batch.dateMark?.endsAt === mark?.endsAt
      )
        return refuse({ code: 'already-so' })
      return happened({
        type: 'batchFinished',
        batch: command.batch,
        finishedAt,
        amount,
        dateMark: mark,
        ...(loads < batch.loads ? { loads } : {}),
        ...(command.measured ? { measured: true } : {}),
      })
    }),
  sample: ({ batches, portions }) =>
    Object.entries(batches).map(([batch, { component, amount }]) => ({
      batch,
      amount: amount + (portions[component]?.amount ?? 1),
    })),
  rules: ['B1', 'B34', 'F30', 'Z54', 'Z56'],
  example: { batch: 'b1', amount: 4_848_000, finishedAt: 1_795_602_000_000 },
  tells:
    '; `"preparedOn": "2026-11-25"`, `useBy` and `freezing` as of [loading](#loading), where it is kept for days; of several loads, `"loads": 1` says how many are finished by now, each with a reading of its own before it (else `cannot-load` with `loads-unread`); said again it corrects the amount; `"measured": true` where somebody weighed or counted it',
})
