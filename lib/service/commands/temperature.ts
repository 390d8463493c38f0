import { z } from 'zod'
import { componentOf } from '#lib/menu/find.ts'
import { resolveProblem } from '#lib/safety/holding.ts'
import type { LoadProblem } from '#lib/safety/load.ts'
import type { ReadingContext } from '#lib/safety/readings.ts'
import { REHEATING_PLACES, reheated } from '#lib/safety/reheating.ts'
import { leftOfBatch } from '#lib/service/batch-loads.ts'
import { batchHeldBy } from '#lib/service/batch-watch.ts'
import { withBatch } from '#lib/service/commands/batch.ts'
import { notPresent } from '#lib/service/commands/cooling.ts'
import {
  type Circumstances,
  type Decision,
  happened,
  refuse,
  whenOpen,
} from '#lib/service/commands/decision.ts'
import { idField } from '#lib/service/commands/fields.ts'
import {
  heatReadingField,
  initialsField,
  momentField,
  readingField,
} from '#lib/service/commands/food-fields.ts'
import { heldReading } from '#lib/service/commands/held-reading.ts'
import { takenHeatReading, takenReading } from '#lib/service/commands/reading.ts'
import { timedReading } from '#lib/service/commands/timed-reading.ts'
import { whenInCharge } from '#lib/service/commands/when-in-charge.ts'
import type { HeldFood } from '#lib/service/food-event.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import type { HeldStock, OffSale } from '#lib/service/food-state.ts'
import { componentIn, type StockKind, stockOf, throwOutKey } from '#lib/service/held-stock.ts'
import type { RunningState, ServiceState } from '#lib/service/state.ts'
import { batchWays, waysFor } from '#lib/service/ways-out.ts'

export const readTemperatureSchema = z.strictObject({
  type: z.literal('readTemperature'),
  what: z.enum(['pan', 'backup', 'batch']).default('pan'),
  id: idField,
  reading: readingField,
  initials: initialsField,
})
export const resolveOffSaleSchema = z.strictObject({
  type: z.literal('resolveOffSale'),
  what: z.enum(['pan', 'backup', 'batch']),
  id: idField,
  way: z.enum(['discard', 'reheat', 'time-only']),
  /** After reheating: where, since when, and what was read. */
  place: z.enum(REHEATING_PLACES).optional(),
  startedAt: momentField.optional(),
  reading: heatReadingField.optional(),
  initials: initialsField,
  /** Of a batch that is cooled again: until when somebody is there who can read it. */
  presentUntil: momentField.optional(),
})

const withStockAt = (
  state: ServiceState,
  { what, id }: { readonly what: StockKind; readonly id: string },
  decide: (stock: HeldStock, state: RunningState) => Decision,
): Decision =>
  whenOpen(state, (running) => {
    const stock = stockOf(running, what, id)
    if (!stock)
      return refuse(
        what === 'pan' ? { code: 'no-such-pan', id } : { code: 'no-such-backup-pan', id },
      )
    return stock.amount > 0 ? decide(stock, running) : refuse({ code: 'nothing-there', id })
  })

/** What is usual to be read of food as it is held; on time alone for long it began cold. */
const contextOf = ({ heldBy, clock }: Pick<HeldFood, 'heldBy' | 'clock'>): ReadingContext => {
  if (heldBy === 'hot') return 'hot-holding'
  return clock?.rule === '4h' ? 'time-start' : 'cold-holding'
}

type ReadTemperature = z.infer<typeof readTemperatureSchema>

/** Of a batch that waits to be loaded; while it is cooked or cools it has readings of its own. */
const readBatch = (
  state: ServiceState,
  command: ReadTemperature,
  { now }: Circumstances,
): Decision =>
  withBatch(state, command.id, (batch, running) => {
    const { what, id } = command
    const not = (problem: LoadProblem) =>
      refuse({ code: 'cannot-load', component: batch.component, problem })
    if (batch.finishedAt === null) return not({ code: 'not-finished' })
    if (leftOfBatch(batch) === 0) return refuse({ code: 'nothing-there', id: batch.component })
    const heldBy = batch.clock ? 'time' : batchHeldBy(running.station, batch, now)
    if (heldBy === null) {
      const component = componentOf(running.station, batch.component)
      if (batch.cooling.length > 0) return refuse({ code: 'still-cooling', batch: id })
      return component.held === 'dry'
        ? refuse({ code: 'already-so' })
        : not({ code: 'not-cooked', why: 'no-reading' })
    }
    const taken = takenReading(running, command.reading, {
      context: contextOf({ heldBy, clock: batch.clock }),
      initials: command.initials,
      now,
      newestAt: batch.newestAt,
    })
    if ('refusal' in taken) return taken
    const { reading } = taken
    return happened(
      ...(heldBy === 'time'
        ? timedReading(running, command, batch.clock, reading)
        : heldReading(running, { what, id, heldBy }, reading, now)),
    )
  })

/**
 * A reading of a pan or a batch that waits. Out of limits it is recorded and takes the food off sale;
 * food on time alone that was read warmer than its rule allows is to be thrown out at once.
 */
export const decideReadTemperature = (
  state: ServiceState,
  command: ReadTemperature,
  circumstances: Circumstances,
): Decision => {
  const { what, id } = command
  if (what === 'batch') return readBatch(state, command, circumstances)
  return withStockAt(state, { what, id }, (stock, running) => {
    const { food } = stock
    const component = componentIn(running.station, id) ?? id
    if (!food || food.heldBy === 'dry') return refuse({ code: 'off-sale', component })
    if (running.toThrowOut[throwOutKey(what, id)]) return refuse({ code: 'past-throw-out', id })
    const taken = takenReading(running, command.reading, {
      context: contextOf(food),
      initials: command.initials,
      now: circumstances.now,
      newestAt: stock.readings.at(-1)?.at ?? null,
    })
    if ('refusal' in taken) return taken
    const { reading } = taken
    const { heldBy, clock } = food
    const events =
      heldBy === 'hot' || heldBy === 'cold'
        ? heldReading(running, { what, id, heldBy }, reading, circumstances.now)
        : timedReading(running, command, clock, reading)
    return happened(...events)
  })
}

type Resolve = z.infer<typeof resolveOffSaleSchema>

/** `newest` is what was read of the food last: it is heated after that. */
const reheatedReading = (
  state: RunningState,
  command: Resolve,
  { newest, now }: { readonly newest: number; readonly now: number },
) => {
  const { place, startedAt, reading } = command
  if (!place || !reading)
    return { refusal: { code: 'reading-lacks', lack: 'no-temperature' } } as const
  const taken = takenHeatReading(state, reading, {
    context: 'reheating',
    initials: command.initials,
    now,
    newestAt: Math.max(newest, startedAt ?? 0),
  })
  if ('refusal' in taken) return taken
  const result = reheated(
    {
      what: 'cooked-here',
      place,
      startedAt: startedAt ?? taken.reading.at,
      readings: [taken.reading],
    },
    now,
    limitsOf(state.station),
    state.station.safety.reheatOn,
  )
  return result.ok
    ? { reading: taken.reading }
    : ({ refusal: { code: 'cannot-reheat', why: result.why } } as const)
}

/** Made food isn't reheated with its pan: it lasts four hours since that was last in limits. */
const madeUntilOf = (state: RunningState, { lastGoodAt }: OffSale) =>
  lastGoodAt === null ? {} : { madeUntil: lastGoodAt + limitsOf(state.station).timeOnly4h.withinMs }

/** The person in charge says which of the ways that the code allows is taken. */
export const decideResolveOffSale = (
  state: ServiceState,
  command: Resolve,
  circumstances: Circumstances,
): Decision =>
  whenInCharge(state, circumstances, (running) => {
    const { what, id, way } = command
    const { now } = circumstances
    const held =
      what === 'batch'
        ? Object.hasOwn(running.batches, id)
          ? running.batches[id]
          : undefined
        : stockOf(running, what, id)
    if (!held) {
      if (what === 'batch') return refuse({ code: 'no-such-batch', batch: id })
      return refuse(
        what === 'pan' ? { code: 'no-such-pan', id } : { code: 'no-such-backup-pan', id },
      )
    }
    if (held.offSale === null) return refuse({ code: 'already-so' })
    const isOfCooling = held.offSale.why === 'cooling-missed'
    const ways = waysFor(running, what, id, now)
    const mayCoolAgain =
      isOfCooling &&
      way === 'reheat' &&
      batchWays(running, id, now).includes('reheat-and-cool-again')
    if (!mayCoolAgain && resolveProblem(way, true, ways))
      return refuse({
        code: 'way-not-allowed',
        ways: isOfCooling ? batchWays(running, id, now) : ways.map((one) => one.way),
      })
    const event = { type: 'offSaleResolved', what, id, way, reading: null, clock: null } as const
    if (way === 'discard') return happened(event)
    if (way === 'reheat') {
      const newest = 'newestAt' in held ? held.newestAt : (held.readings.at(-1)?.at ?? 0)
      const heated = reheatedReading(running, command, { newest, now })
      if ('refusal' in heated) return refuse(heated.refusal)
      const { reading } = heated
      const { presentUntil } = command
      const away = mayCoolAgain
        ? notPresent(running, id, { startsAt: reading.at, presentUntil })
        : null
      if (away) return refuse(away)
      const stays = mayCoolAgain && presentUntil !== undefined ? { presentUntil } : {}
      return happened({ ...event, reading, ...madeUntilOf(running, held.offSale), ...stays })
    }
    const timed = ways.find((one) => one.way === 'time-only')
    if (timed?.way !== 'time-only') return refuse({ code: 'way-not-allowed', ways: ['discard'] })
    const { startedAt, throwOutAt } = timed
    const clock = { rule: '4h', startedAt, throwOutAt } as const
    return happened({ ...event, clock, madeUntil: throwOutAt })
  })
