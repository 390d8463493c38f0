/** Food that is put into a pan, on the line or behind it: how much, of what, and as it was read. */

import { z } from 'zod'
import { startOfNextDay } from '#lib/measure/civil.ts'
import { fillProblem, weigh } from '#lib/measure/pan-rules.ts'
import { batchBarred } from '#lib/rooms/food/facts/batch-watch.ts'
import { firstDayOf, toldMark } from '#lib/rooms/food/facts/dated.ts'
import {
  batchesInOrder,
  heldAs,
  loadProblemOf,
  needsBatch,
  needsReading,
} from '#lib/rooms/food/facts/food-now.ts'
import { takenReading } from '#lib/rooms/food/facts/reading.ts'
import { restsOf } from '#lib/rooms/food/facts/rest-of-pan.ts'
import { asCooked, fromBackup, standIn } from '#lib/rooms/pans/commands/from-backup.ts'
import { isNameless, unsaidOf } from '#lib/rooms/pans/commands/nameless.ts'
import { readIn, readUnsold } from '#lib/rooms/pans/commands/read-out.ts'
import { holdsAtMost, mostInPan, tareOf } from '#lib/rooms/pans/facts/capacity.ts'
import { clockAtLoad, heldUntilIn } from '#lib/rooms/pans/facts/clock-at-load.ts'
import { earlierStamp, pastStamp } from '#lib/safety/date-stamp.ts'
import type { HeldBy } from '#lib/safety/holding.ts'
import type { LoadProblem } from '#lib/safety/load.ts'
import type { Reading } from '#lib/safety/readings.ts'
import { leftOfBatch } from '#lib/service/batch-loads.ts'
import { amountField, idField } from '#lib/service/commands/fields.ts'
import { dateFields, initialsField, readingField } from '#lib/service/commands/food-fields.ts'
import type { ServiceEvent } from '#lib/service/events/event.ts'
import type { HeldFood } from '#lib/service/events/food-event.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import { findBackup } from '#lib/service/held-stock.ts'
import { findBatch, noPlace } from '#lib/service/place.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findPan } from '#lib/station/find.ts'
import type { Component } from '#lib/station/station-document.ts'

export const incomingFields = {
  /** In the component's unit; of a back-up pan that is put in, all of it where left away. */
  amount: amountField.optional(),
  /** Gross, with the pan: its tare is taken off. Milligrams. */
  weighedMg: amountField.optional(),
  batch: idField.optional(),
  /** Of no batch: it is straight from the pack, which was opened on `preparedOn`. */
  bought: z.literal(true).optional(),
  /** The back-up pan that it comes out of. */
  from: idField.optional(),
  heldBy: z.enum(['hot', 'cold', 'time']).optional(),
  reading: readingField.optional(),
  initials: initialsField,
  ...dateFields,
  /** An older batch stays behind, and somebody means it. */
  notFirst: z.boolean().optional(),
}

const incomingSchema = z.strictObject(incomingFields)

type Told = z.infer<typeof incomingSchema>

export interface Into {
  /** Id of the pan of the line or the back-up pan. */
  readonly id: string
  readonly component: Component
  readonly guarded: boolean
  /** What stays in it; 0 where it is empty or changed. */
  readonly holds: number
  /** How the food that stays is held; null where none stays. */
  readonly heldBy: HeldBy | null
  /** A back-up pan is set into the well itself. */
  readonly isWhole: boolean
}

export interface Incoming {
  readonly amount: number
  readonly batch: string | null
  readonly from: string | null
  readonly food: HeldFood
  readonly reading: Reading | null
  /** Said to be straight from the pack. */
  readonly bought: boolean
  /** Its reading started its clock. */
  readonly startsClock: boolean
}

export type Found<Value> =
  /** `also`: what was seen of the food with it, which is recorded all the same. */
  { readonly refusal: Refusal; readonly also?: readonly ServiceEvent[] } | { readonly found: Value }

const amountOf = (state: RunningState, told: Told, into: Into): Found<number> => {
  const not = (refusal: Refusal) => ({ refusal })
  const container = told.from !== undefined && into.isWhole ? told.from : into.id
  const place = findPan(state.station, container) ?? findBackup(state.station, container)
  if (!place) return not(noPlace({ what: 'pan', id: container }))
  const absurdly = mostInPan(state, place)
  const { amount, weighedMg } = told
  if (amount !== undefined && weighedMg !== undefined)
    return not({ code: 'reading-unclear', pan: into.id })
  let net = amount ?? (told.from === undefined ? undefined : state.backupPans[told.from]?.amount)
  if (weighedMg !== undefined) {
    if (state.portions[into.component.id]?.unit === 'piece')
      return not({ code: 'not-by-weight', pan: into.id })
    const tareMg = tareOf(state, container)
    if (tareMg === null) return not({ code: 'no-tare', pan: into.id })
    if (!Number.isSafeInteger(weighedMg) || weighedMg < 0)
      return not({ code: 'absurd-amount', pan: into.id, most: absurdly })
    const weighed = weigh(weighedMg, tareMg, holdsAtMost(state, container))
    if (!weighed.ok) return not({ code: 'wrong-amount', pan: into.id, problem: weighed.problem })
    net = weighed.netMg
  }
  if (net === undefined)
    return not({ code: 'wrong-amount', pan: into.id, problem: { code: 'no-amount' } })
  if (!Number.isSafeInteger(net) || net < 1 || net > absurdly)
    return not({ code: 'absurd-amount', pan: into.id, most: absurdly })
  const problem = fillProblem(into.holds + net, holdsAtMost(state, container))
  return problem ? not({ code: 'wrong-amount', pan: into.id, problem }) : { found: net }
}

const batchOf = (
  state: RunningState,
  told: Told,
  { component }: Into,
  amount: number,
): Found<BatchState | null> => {
  const not = (refusal: Refusal) => ({ refusal })
  const { batch: id } = told
  if (id === undefined)
    return needsBatch(component)
      ? not({ code: 'no-batch', component: component.id })
      : { found: null }
  const batch = findBatch(state, id)
  if (!batch) return not(noPlace({ what: 'batch', id }))
  if (batch.component !== component.id)
    return not({ code: 'other-component', component: component.id, batch: id })
  const most = leftOfBatch(batch)
  if (batch.finishedAt !== null && amount > most)
    return not({ code: 'more-than-batch', batch: id, most })
  const first = batchesInOrder(state, component.id)[0]
  return first !== undefined && first !== id && told.notFirst !== true && batch.finishedAt !== null
    ? not({ code: 'older-batch-first', batch: first })
    : { found: batch }
}

const readingOf = (
  state: RunningState,
  told: Told,
  heldBy: HeldBy,
  now: number,
): Found<Reading | null> => {
  if (told.reading === undefined || !needsReading(heldBy)) return { found: null }
  const taken = takenReading(state, told.reading, {
    context: heldBy === 'hot' ? 'hot-holding' : 'cold-holding',
    initials: told.initials,
    now,
    newestAt: null,
  })
  return 'refusal' in taken ? taken : { found: taken.reading }
}

const readOf = (...of: Parameters<typeof readingOf>): Reading | null => {
  const read = readingOf(...of)
  return 'found' in read ? read.found : null
}

/** What goes in, or why it doesn't: the rules of loading, one after the other. */
export const incoming = (
  state: RunningState,
  told: Told,
  into: Into,
  now: number,
): Found<Incoming> => {
  const awaited = restsOf(state, into.component.id)
  if (awaited > 0 && isNameless(told))
    return { refusal: { code: 'throw-out-first', count: awaited } }
  const source = told.from === undefined ? null : fromBackup(state, told.from, into.component.id)
  const unsold = (refusal: Refusal): Found<Incoming> => {
    const also = readUnsold(state, told, (by) => readOf(state, told, by, now), now)
    return also.length > 0 ? { refusal, also } : { refusal }
  }
  if (source && 'refusal' in source) return unsold(source.refusal)
  const amount = amountOf(state, told, into)
  if ('refusal' in amount) return amount
  const batch = source
    ? { found: standIn(source.found, into.component.id) }
    : batchOf(state, told, into, amount.found)
  if ('refusal' in batch) return batch
  const { clock = null, finishedAt = null } = batch.found ?? {}
  const heldBy =
    source?.found.food.heldBy ??
    heldUntilIn(state.station, into, clock !== null) ??
    heldAs(into.component, told.heldBy)
  const unsaid = unsaidOf(told, into.component.id, heldBy)
  if (unsaid) return { refusal: unsaid }
  const reading = readingOf(state, told, heldBy, now)
  if ('refusal' in reading) return reading
  const component = source || heldBy === 'dry' ? asCooked(into.component) : into.component
  const readings = reading.found ? [reading.found] : []
  const problem =
    loadProblemOf(state, component, batch.found, { heldBy, readings, now }) ??
    batchBarred(state, told.batch, now)
  const cannot = (why: LoadProblem) =>
    ({ refusal: { code: 'cannot-load', component: into.component.id, problem: why } }) as const
  if (problem?.code === 'load-out-of-limits')
    return { ...cannot(problem), also: readIn(state, told, heldBy, reading.found, now) }
  if (problem) return unsold(cannot(problem).refusal)
  const unmarked = !source && heldBy === 'cold' && !batch.found?.dateMark ? batch.found : null
  const preparedOn = unmarked ? firstDayOf(state, unmarked, told, now) : told.preparedOn
  const dated = toldMark(state, { ...told, preparedOn }, now)
  if ('refusal' in dated) return dated
  const dateMark = earlierStamp(dated.mark, batch.found?.dateMark ?? null)
  if (dateMark && pastStamp(dateMark, now))
    return cannot({ code: 'past-date-mark', lastDay: dateMark.lastDay })
  // A use-by alone tells no first day, so that what ends with its day still does.
  const endsWithDay = source?.found.food.dayEndsAt
  const hadFirstDay = (batch.found?.dateMark ?? null) !== null && endsWithDay === undefined
  const isUndated = heldBy === 'cold' && preparedOn === undefined && !hadFirstDay
  const ownDay = startOfNextDay(now, state.station.timeZone)
  // Under a rule that asks for readings the last one goes along: from it the next is due.
  const onClock = clock?.rule === '6h' ? (batch.found?.readings.at(-1) ?? null) : null
  const started = clockAtLoad(state, into, { heldBy, reading: reading.found }, now)
  if (started && !started.ok) return { refusal: { code: 'cannot-start-clock', why: started.why } }
  return {
    found: {
      amount: amount.found,
      batch: source ? null : (told.batch ?? null),
      from: told.from ?? null,
      food: {
        heldBy: started ? 'time' : heldBy,
        clock: started?.clock ?? clock,
        dateMark,
        finishedAt: finishedAt ?? reading.found?.at ?? now,
        guarded: into.guarded,
        ...(isUndated ? { dayEndsAt: endsWithDay ?? ownDay } : {}),
      },
      reading: reading.found ?? onClock,
      bought: isNameless(told) && told.bought === true,
      startsClock: started !== null,
    },
  }
}
