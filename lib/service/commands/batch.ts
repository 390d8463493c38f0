import { z } from 'zod'
import { componentOf, findComponent } from '#lib/menu/find.ts'
import { cookedTo } from '#lib/safety/cooking.ts'
import { earlierStamp } from '#lib/safety/date-stamp.ts'
import { batchTimesProblem, type LoadProblem } from '#lib/safety/load.ts'
import { momentProblem } from '#lib/safety/readings.ts'
import { loadsToCome, readOfLoad } from '#lib/service/batch-loads.ts'
import { loadsRead } from '#lib/service/batch-read.ts'
import { firstDayOf, toldMark } from '#lib/service/commands/dated.ts'
import {
  type Circumstances,
  type Decision,
  happened,
  refuse,
  whenOpen,
} from '#lib/service/commands/decision.ts'
import { amountField, idField } from '#lib/service/commands/fields.ts'
import {
  dateFields,
  heatReadingField,
  initialsField,
  momentField,
} from '#lib/service/commands/food-fields.ts'
import { takenHeatReading } from '#lib/service/commands/reading.ts'
import { foodKindOf, limitsOf } from '#lib/service/food-limits.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import { boundAt } from '#lib/service/held-stock.ts'
import { findBatch, noPlace } from '#lib/service/place.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { RunningState, ServiceState } from '#lib/service/state.ts'

/** More of one making is a slip of the finger: a ton, or so many pieces. */
const MOST_IN_BATCH = 1_000_000_000

export const startBatchSchema = z.strictObject({
  type: z.literal('startBatch'),
  /** Its id, where a screen gives one; else the next of b1, b2, b3 ... */
  batch: z
    .string()
    .regex(/^[a-z][a-z0-9-]{0,39}$/)
    .optional(),
  component: idField,
  loads: z.int().min(1).max(20),
  startedAt: momentField.optional(),
})
export const recordCookingSchema = z.strictObject({
  type: z.literal('recordCooking'),
  batch: idField,
  reading: heatReadingField,
  initials: initialsField,
})
export const finishBatchSchema = z.strictObject({
  type: z.literal('finishBatch'),
  batch: idField,
  /** What it gave, in the component's unit. */
  amount: amountField,
  /** Of its loads, so many are finished by now; all of them where left away. */
  loads: z.int().min(1).max(20).optional(),
  finishedAt: momentField.optional(),
  ...dateFields,
})

/** Decides on a batch that there is and that wasn't thrown out. */
export const withBatch = (
  state: ServiceState,
  id: string,
  decide: (batch: BatchState, state: RunningState) => Decision,
): Decision =>
  whenOpen(state, (running) => {
    const batch = findBatch(running, id)
    if (!batch) return refuse(noPlace({ what: 'batch', id }))
    if (batch.thrownOutAt !== null || boundAt(running, 'batch', id) !== undefined)
      return refuse({
        code: 'cannot-load',
        component: batch.component,
        problem: { code: 'thrown-out' },
      })
    return decide(batch, running)
  })

const freeId = (state: RunningState): string => {
  let number = state.nextBatch
  while (state.batches[`b${number}`]) number += 1
  return `b${number}`
}

export const decideStartBatch = (
  state: ServiceState,
  command: z.infer<typeof startBatchSchema>,
  { now }: Circumstances,
): Decision =>
  whenOpen(state, (running) => {
    const { component, loads } = command
    if (!findComponent(running.station, component))
      return refuse({ code: 'no-such-component', id: component })
    const batch = command.batch ?? freeId(running)
    if (running.batches[batch]) return refuse({ code: 'already-so' })
    const startedAt = command.startedAt ?? now
    const problem = momentProblem(startedAt, null, now)
    if (problem) return refuse({ code: 'wrong-moment', problem })
    return happened({ type: 'batchStarted', batch, component, loads, startedAt })
  })

/** A reading that fails is recorded too: it says why the batch isn't loaded yet. */
export const decideRecordCooking = (
  state: ServiceState,
  command: z.infer<typeof recordCookingSchema>,
  { now }: Circumstances,
): Decision =>
  withBatch(state, command.batch, (batch, running) => {
    const component = findComponent(running.station, batch.component)
    if (!component) return refuse({ code: 'no-such-component', id: batch.component })
    // It waits, and is read as what waits: cooking reads nothing good again.
    if (batch.offSale) return refuse({ code: 'off-sale', component: batch.component })
    if (batch.finishedAt !== null && batch.cooked && loadsToCome(batch) === 0)
      return refuse({ code: 'already-so' })
    const taken = takenHeatReading(running, command.reading, {
      context: 'cooking',
      initials: command.initials,
      now,
      newestAt: Math.max(batch.startedAt, batch.cooking.at(-1)?.at ?? 0),
    })
    if ('refusal' in taken) return taken
    const readings = [...readOfLoad(batch), taken.reading]
    const cooking = { kind: foodKindOf(component), cookedIn: component.food.cookedIn, readings }
    const met = cookedTo(cooking, limitsOf(running.station))?.met ?? true
    return happened({ type: 'batchCooked', batch: command.batch, reading: taken.reading, met })
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
export const decideFinishBatch = (
  state: ServiceState,
  command: z.infer<typeof finishBatchSchema>,
  { now }: Circumstances,
): Decision =>
  withBatch(state, command.batch, (batch, running) => {
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
    const failed = isAsked ? whyNotCooked(running, batch, more) : null
    if (failed) return refuse(failed)
    const preparedOn = firstDayOf(running, batch, command, now)
    const told = toldMark(running, { ...command, preparedOn }, now)
    if ('refusal' in told) return told
    // Said again, a date only moves to the earlier.
    const mark = earlierStamp(told.mark, batch.dateMark)
    if (
      batch.finishedAt === finishedAt &&
      batch.amount === amount &&
      batch.loadsDone === loads &&
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
    })
  })
