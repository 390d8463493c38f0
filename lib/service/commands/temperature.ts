import { z } from 'zod'
import { componentOf } from '#lib/menu/find.ts'
import type { LoadProblem } from '#lib/safety/load.ts'
import type { ReadingContext } from '#lib/safety/readings.ts'
import { leftOfBatch } from '#lib/service/batch-loads.ts'
import { batchHeldBy } from '#lib/service/batch-watch.ts'
import { withBatch } from '#lib/service/commands/batch.ts'
import { type Decision, happened, refuse } from '#lib/service/commands/decision.ts'
import { defineCommand, type Told } from '#lib/service/commands/define.ts'
import { HOT_READING } from '#lib/service/commands/example-parts.ts'
import { idField } from '#lib/service/commands/fields.ts'
import { initialsField, readingField } from '#lib/service/commands/food-fields.ts'
import { heldReading } from '#lib/service/commands/held-reading.ts'
import { takenReading } from '#lib/service/commands/reading.ts'
import { timedReading } from '#lib/service/commands/timed-reading.ts'
import type { HeldFood } from '#lib/service/food-event.ts'
import type { HeldStock } from '#lib/service/food-state.ts'
import {
  allStock,
  componentIn,
  type StockKind,
  stockOf,
  throwOutKey,
} from '#lib/service/held-stock.ts'
import { INVENTED_INITIALS, readingInLimits } from '#lib/service/invented-readings.ts'
import type { RunningState } from '#lib/service/state.ts'

const fields = {
  what: z.enum(['pan', 'backup', 'batch']).default('pan'),
  id: idField,
  reading: readingField,
  initials: initialsField,
}

type ReadTemperature = Told<typeof fields>

const withStockAt = (
  state: RunningState,
  { what, id }: { readonly what: StockKind; readonly id: string },
  decide: (stock: HeldStock) => Decision,
): Decision => {
  const stock = stockOf(state, what, id)
  if (!stock) return refuse({ code: 'unknown', what, id })
  return stock.amount > 0 ? decide(stock) : refuse({ code: 'nothing-there', id })
}

/** What is usual to be read of food as it is held; on time alone for long it began cold. */
const contextOf = ({ heldBy, clock }: Pick<HeldFood, 'heldBy' | 'clock'>): ReadingContext => {
  if (heldBy === 'hot') return 'hot-holding'
  return clock?.rule === '4h' ? 'time-start' : 'cold-holding'
}

/** Of a batch that waits to be loaded; while it is cooked or cools it has readings of its own. */
const readBatch = (state: RunningState, command: ReadTemperature, now: number): Decision =>
  withBatch(state, command.id, (batch) => {
    const { what, id } = command
    const not = (problem: LoadProblem) =>
      refuse({ code: 'cannot-load', component: batch.component, problem })
    if (batch.finishedAt === null) return not({ code: 'not-finished' })
    if (leftOfBatch(batch) === 0) return refuse({ code: 'nothing-there', id: batch.component })
    const heldBy = batch.clock ? 'time' : batchHeldBy(state.station, batch, now)
    if (heldBy === null) {
      const component = componentOf(state.station, batch.component)
      if (batch.cooling.length > 0) return refuse({ code: 'still-cooling', batch: id })
      return component.held === 'dry'
        ? refuse({ code: 'already-so' })
        : not({ code: 'not-cooked', why: 'no-reading' })
    }
    const taken = takenReading(state, command.reading, {
      context: contextOf({ heldBy, clock: batch.clock }),
      initials: command.initials,
      now,
      newestAt: batch.newestAt,
    })
    if ('refusal' in taken) return taken
    const { reading } = taken
    return happened(
      ...(heldBy === 'time'
        ? timedReading(state, command, batch.clock, reading)
        : heldReading(state, { what, id, heldBy }, reading, now)),
    )
  })

/**
 * A reading of a pan or a batch that waits. Out of limits it is recorded and takes the food off sale;
 * food on time alone that was read warmer than its rule allows is to be thrown out at once.
 */
export const readTemperature = defineCommand({
  type: 'readTemperature',
  who: ['assembly'],
  stages: ['open'],
  schema: fields,
  decide: (state, command, { now }) => {
    const { what, id } = command
    if (what === 'batch') return readBatch(state, command, now)
    return withStockAt(state, { what, id }, (stock) => {
      const { food } = stock
      const component = componentIn(state.station, id) ?? id
      if (!food || food.heldBy === 'dry') return refuse({ code: 'off-sale', component })
      if (state.toThrowOut[throwOutKey(what, id)]) return refuse({ code: 'past-throw-out', id })
      const taken = takenReading(state, command.reading, {
        context: contextOf(food),
        initials: command.initials,
        now: now,
        newestAt: stock.readings.at(-1)?.at ?? null,
      })
      if ('refusal' in taken) return taken
      const { reading } = taken
      const { heldBy, clock } = food
      const events =
        heldBy === 'hot' || heldBy === 'cold'
          ? heldReading(state, { what, id, heldBy }, reading, now)
          : timedReading(state, command, clock, reading)
      return happened(...events)
    })
  },
  sample: (state) =>
    allStock(state).flatMap(({ what, id, stock }) => {
      const held = stock.food?.heldBy
      const reading =
        held === 'hot' || held === 'cold' ? readingInLimits(state.station, { held }) : undefined
      return reading ? [{ what, id, reading, initials: INVENTED_INITIALS }] : []
    }),
  rules: ['B12', 'B14', 'B28', 'B32', 'F42'],
  example: { what: 'pan', id: 'pan-rice', reading: HOT_READING, initials: 'KT' },
  tells: ' (`what`: `pan`, `backup` or `batch`)',
})
