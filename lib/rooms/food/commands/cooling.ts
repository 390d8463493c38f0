import { z } from 'zod'
import { withFoodOf } from '#lib/rooms/food/commands/batch.ts'
import { batchHeldBy } from '#lib/rooms/food/facts/batch-watch.ts'
import { coolsFrom, notPresent } from '#lib/rooms/food/facts/cooling/who-stays.ts'
import { coolingOf } from '#lib/rooms/food/facts/food-now.ts'
import { unreadUntil } from '#lib/rooms/food/facts/held-reading.ts'
import {
  cookedReading,
  INVENTED_INITIALS,
  readingInLimits,
} from '#lib/rooms/food/facts/invented-readings.ts'
import { takenHeatReading, takenReading } from '#lib/rooms/food/facts/reading.ts'
import { HOUR_MS } from '#lib/safety/limits.ts'
import { mayReheatOn, REHEATING_PLACES, reheated } from '#lib/safety/reheating.ts'
import { happened, refuse, refuseHaving } from '#lib/service/commands/decision.ts'
import { defineCommand } from '#lib/service/commands/define.ts'
import { HEAT_READING, HOT_READING } from '#lib/service/commands/example-parts.ts'
import { idField } from '#lib/service/commands/fields.ts'
import {
  heatReadingField,
  initialsField,
  momentField,
  readingField,
} from '#lib/service/commands/food-fields.ts'
import type { ServiceEvent } from '#lib/service/events/event.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import { componentOf, findComponent } from '#lib/station/find.ts'

/**
 * With the first reading somebody stays who can take the others: of both stages of cooked food, of the
 * one of food from room temperature; of what is cold by then, or was missed, nothing is left to read. A
 * reading that misses its stage takes the batch off sale.
 */
export const recordCooling = defineCommand({
  type: 'recordCooling',
  who: [],
  stages: ['planned', 'open'],
  schema: {
    batch: idField,
    reading: readingField,
    initials: initialsField,
    /** Until when somebody is there who can read it; told with the first reading, and anew with others. */
    presentUntil: momentField.optional(),
  },
  decide: (state, command, { now }) =>
    withFoodOf(state, command.batch, (batch) => {
      const { batch: id } = command
      if (batch.offSale) return refuse({ code: 'off-sale', component: batch.component })
      if (batch.clock)
        return refuse({
          code: 'cannot-load',
          component: batch.component,
          problem: { code: 'not-back-to-hot-or-cold', at: batch.clock.throwOutAt },
        })
      const taken = takenReading(state, command.reading, {
        context: 'cooling',
        initials: command.initials,
        now,
        newestAt: batch.newestAt,
      })
      if ('refusal' in taken) return taken
      const { reading } = taken
      const isFirst = batch.cooling.length === 0
      const heldBy = isFirst ? batchHeldBy(state.station, batch, now) : null
      const unread = heldBy === null ? [] : unreadUntil(state, { id, heldBy }, reading, now)
      if (unread.length > 0)
        return refuseHaving({ code: 'off-sale', component: batch.component }, unread)
      const after = { ...batch, cooling: [...batch.cooling, reading] }
      const cooling = coolingOf(state.station, after, now)
      if (isFirst && cooling) {
        const from = coolsFrom(componentOf(state.station, batch.component))
        const { presentUntil } = command
        const away = notPresent(state, id, { cooling, from, after: reading.at, presentUntil })
        if (away) return refuse(away)
      }
      const read: ServiceEvent = {
        type: 'coolingRead',
        batch: id,
        reading,
        ...(command.presentUntil === undefined ? {} : { presentUntil: command.presentUntil }),
      }
      const isOut =
        cooling?.state === 'missed' ||
        cooling?.state === 'warmed' ||
        (cooling?.state === 'no-start' && cooling.below)
      return isOut
        ? happened(read, {
            type: 'takenOffSale',
            what: 'batch',
            id,
            why: 'cooling-missed',
            lastGoodAt: batch.cooling.at(-1)?.at ?? null,
          })
        : happened(read)
    }),
  sample: ({ station, batches, at }) => {
    const reading = readingInLimits(station, { held: 'hot' })
    const presentUntil = at + 8 * HOUR_MS
    return Object.keys(batches).flatMap((batch) =>
      reading ? [{ batch, reading, initials: INVENTED_INITIALS, presentUntil }] : [],
    )
  },
  rules: ['B19', 'B29', 'B80', 'F23', 'F24', 'F25', 'F87'],
  example: {
    batch: 'b1',
    reading: HOT_READING,
    initials: 'KT',
    presentUntil: 1_795_620_000_000,
  },
  tells:
    ' (`presentUntil`, with the first reading and, where that changes, with others: until when somebody is there who can read it)',
})

/** Cooled food for hot holding: where the station may, to its limit, within its time. */
export const recordReheating = defineCommand({
  type: 'recordReheating',
  who: [],
  stages: ['planned', 'open'],
  schema: {
    batch: idField,
    place: z.enum(REHEATING_PLACES),
    /** When it left the cold. */
    startedAt: momentField,
    reading: heatReadingField,
    initials: initialsField,
  },
  decide: (state, command, { now }) =>
    withFoodOf(state, command.batch, (batch) => {
      const { place, startedAt } = command
      const { reheatOn } = state.station.safety
      if (batch.offSale) return refuse({ code: 'off-sale', component: batch.component })
      if (!mayReheatOn(place, reheatOn)) return refuse({ code: 'cannot-reheat', why: 'not-there' })
      if (!findComponent(state.station, batch.component)?.food.reheatable)
        return refuse({ code: 'way-not-allowed', ways: ['discard'] })
      // Hot food that waits is read, and off sale it is resolved: reheating is for what has cooled.
      if (coolingOf(state.station, batch, now)?.state !== 'cooled')
        return refuse({
          code: 'cannot-load',
          component: batch.component,
          problem: { code: 'not-cooled' },
        })
      if (batch.reheat?.ok) return refuse({ code: 'already-so' })
      const taken = takenHeatReading(state, command.reading, {
        context: 'reheating',
        initials: command.initials,
        now,
        newestAt: Math.max(batch.newestAt, startedAt),
      })
      if ('refusal' in taken) return taken
      const { reading } = taken
      const before = batch.reheat?.startedAt === startedAt ? batch.reheat.readings : []
      const result = reheated(
        { what: 'cooked-here', place, startedAt, readings: [...before, reading] },
        now,
        limitsOf(state.station),
        reheatOn,
      )
      if (!result.ok && result.why === 'too-late')
        return refuse({ code: 'cannot-reheat', why: 'too-late' })
      return happened({
        type: 'batchReheated',
        batch: command.batch,
        place,
        startedAt,
        reading,
        ok: result.ok,
        why: result.ok ? null : result.why,
      })
    }),
  sample: ({ station, batches, at }) =>
    Object.entries(batches).flatMap(([batch, { component }]) => {
      const reading = cookedReading(station, componentOf(station, component))
      return reading
        ? [{ batch, place: 'range', startedAt: at, reading, initials: INVENTED_INITIALS } as const]
        : []
    }),
  rules: ['B20', 'B36', 'F26'],
  example: {
    batch: 'b1',
    place: 'range',
    startedAt: 1_795_602_000_000,
    reading: HEAT_READING,
    initials: 'KT',
  },
})
