import { z } from 'zod'
import { findComponent } from '#lib/menu/find.ts'
import { inLimits, resolveProblem } from '#lib/safety/holding.ts'
import { meets } from '#lib/safety/limits.ts'
import type { Reading, ReadingContext } from '#lib/safety/readings.ts'
import { REHEATING_PLACES, reheated } from '#lib/safety/reheating.ts'
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
import { whenInCharge } from '#lib/service/commands/in-charge.ts'
import { takenHeatReading, takenReading } from '#lib/service/commands/reading.ts'
import { withHolds } from '#lib/service/commands/with-holds.ts'
import type { ServiceEvent } from '#lib/service/event.ts'
import type { HeldFood } from '#lib/service/food-event.ts'
import { batchWays, limitsOf, waysFor } from '#lib/service/food-now.ts'
import type { HeldStock } from '#lib/service/food-state.ts'
import { componentIn, type StockKind, stockOf, throwOutKey } from '#lib/service/held-stock.ts'
import type { RunningState, ServiceState } from '#lib/service/state.ts'
import { stopsFor } from '#lib/service/thrown-out.ts'

export const readTemperatureSchema = z.strictObject({
  type: z.literal('readTemperature'),
  what: z.enum(['pan', 'backup']).default('pan'),
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

/** A missed reading that comes late lifts nothing once its food could have been out for so long. */
const liftsMissed = (state: RunningState, stock: HeldStock, at: number): boolean => {
  const { offSale } = stock
  if (offSale?.why !== 'reading-missed' || offSale.lastGoodAt === null) return false
  return at - offSale.lastGoodAt < limitsOf(state.station).timeOnly4h.withinMs
}

/** What is usual to be read of food as it is held; on time alone for long it began cold. */
const contextOf = ({ heldBy, clock }: HeldFood): ReadingContext => {
  if (heldBy === 'hot') return 'hot-holding'
  return clock?.rule === '4h' ? 'time-start' : 'cold-holding'
}

/** What a reading of a hot or cold pan brings with it. */
const heldReading = (
  state: RunningState,
  what: StockKind,
  id: string,
  stock: HeldStock,
  reading: Reading,
  heldBy: 'hot' | 'cold',
): readonly ServiceEvent[] => {
  const component = findComponent(state.station, componentIn(state.station, id) ?? '')
  const isIn = inLimits(heldBy, reading, limitsOf(state.station), component?.food.roast ?? false)
  const isLifted = isIn && liftsMissed(state, stock, reading.at)
  const read: ServiceEvent = {
    type: 'temperatureRead',
    what,
    id,
    reading,
    inLimits: isIn,
    ...(isLifted ? { lifts: true } : {}),
  }
  if (isIn || stock.offSale?.why === 'out-of-limits') return [read]
  const lastGoodAt = stock.offSale?.lastGoodAt ?? stock.readings.at(-1)?.at ?? null
  return [read, { type: 'takenOffSale', what, id, why: 'out-of-limits', lastGoodAt }]
}

/**
 * A reading of a pan. Out of limits it is recorded and takes the pan off sale; food on time alone
 * that was read warmer than its rule allows is to be thrown out at once.
 */
export const decideReadTemperature = (
  state: ServiceState,
  command: z.infer<typeof readTemperatureSchema>,
  circumstances: Circumstances,
): Decision =>
  withStockAt(state, command, (stock, running) => {
    const { what, id } = command
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
    if (food.heldBy === 'hot' || food.heldBy === 'cold')
      return happened(
        ...withHolds(
          running,
          heldReading(running, what, id, stock, reading, food.heldBy),
          circumstances,
        ),
      )
    const isWarm =
      food.clock !== null &&
      food.clock.rule !== '4h' &&
      !meets(reading.temperature, limitsOf(running.station).timeOnlyWarmest)
    const read: ServiceEvent = {
      type: 'temperatureRead',
      what,
      id,
      reading,
      inLimits: !isWarm,
    }
    if (!isWarm) return happened(read)
    const passed: ServiceEvent = { type: 'throwOutPassed', what, id, because: 'too-warm' }
    return happened(
      ...withHolds(running, [read, passed, ...stopsFor(running, [id])], circumstances),
    )
  })

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
    const ways = what === 'batch' ? [] : waysFor(running, what, id, now)
    const mayBatch =
      what === 'batch' &&
      (way === 'discard' ||
        (way === 'reheat' && batchWays(running, id, now).includes('reheat-and-cool-again')))
    if (!mayBatch && resolveProblem(way, true, ways))
      return refuse({
        code: 'way-not-allowed',
        ways: what === 'batch' ? batchWays(running, id, now) : ways.map((one) => one.way),
      })
    const event = { type: 'offSaleResolved', what, id, way, reading: null, clock: null } as const
    if (way === 'discard')
      return happened(
        ...withHolds(running, [event, ...stopsFor(running, what === 'batch' ? [] : [id])], {
          ...circumstances,
        }),
      )
    if (way === 'reheat') {
      const newest = 'readings' in held ? (held.readings.at(-1)?.at ?? 0) : held.newestAt
      const heated = reheatedReading(running, command, { newest, now })
      return 'refusal' in heated
        ? refuse(heated.refusal)
        : happened({ ...event, reading: heated.reading })
    }
    const timed = ways.find((one) => one.way === 'time-only')
    if (timed?.way !== 'time-only') return refuse({ code: 'way-not-allowed', ways: ['discard'] })
    const { startedAt, throwOutAt } = timed
    return happened({ ...event, clock: { rule: '4h', startedAt, throwOutAt } })
  })
