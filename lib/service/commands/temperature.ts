import { z } from 'zod'
import { componentOf } from '#lib/menu/find.ts'
import { type HeldBy, resolveProblem } from '#lib/safety/holding.ts'
import type { LoadProblem } from '#lib/safety/load.ts'
import type { ReadingContext } from '#lib/safety/readings.ts'
import { REHEATING_PLACES, reheated } from '#lib/safety/reheating.ts'
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
import { type HeldFood, PLACE_KINDS } from '#lib/service/food-event.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import type { OffSale } from '#lib/service/food-state.ts'
import { boundAt } from '#lib/service/held-stock.ts'
import { noPlace, type Placed, placeOf } from '#lib/service/place.ts'
import { heldByAt } from '#lib/service/place-now.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { RunningState, ServiceState } from '#lib/service/state.ts'
import { batchWays, waysFor } from '#lib/service/ways-out.ts'

export const readTemperatureSchema = z.strictObject({
  type: z.literal('readTemperature'),
  what: z.enum(PLACE_KINDS).default('pan'),
  id: idField,
  reading: readingField,
  initials: initialsField,
})
export const resolveOffSaleSchema = z.strictObject({
  type: z.literal('resolveOffSale'),
  what: z.enum(PLACE_KINDS),
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

/** What is usual to be read of food as it is held; on time alone for long it began cold. */
const contextOf = (heldBy: HeldBy | null, clock: HeldFood['clock']): ReadingContext => {
  if (heldBy === 'hot') return 'hot-holding'
  return clock?.rule === '4h' ? 'time-start' : 'cold-holding'
}

/** Why a batch isn't read as what waits: while it is cooked or cools it has readings of its own. */
const batchUnread = (
  { station, batches }: RunningState,
  { id, component, stage, amount }: Placed,
  { isBound, heldBy }: { readonly isBound: boolean; readonly heldBy: HeldBy | null },
): Refusal | null => {
  const not = (problem: LoadProblem): Refusal => ({ code: 'cannot-load', component, problem })
  if (isBound || stage === 'gone') return not({ code: 'thrown-out' })
  if (stage === 'making') return not({ code: 'not-finished' })
  if (amount === 0) return { code: 'nothing-there', id: component }
  if (heldBy !== null) return null
  if ((batches[id]?.cooling.length ?? 0) > 0) return { code: 'still-cooling', batch: id }
  return componentOf(station, component).held === 'dry'
    ? { code: 'already-so' }
    : not({ code: 'not-cooked', why: 'no-reading' })
}

/** Why what stands on the line or behind it isn't read. */
const stockUnread = (
  { id, component, amount }: Placed,
  { isBound, heldBy }: { readonly isBound: boolean; readonly heldBy: HeldBy | null },
): Refusal | null => {
  if (amount <= 0) return { code: 'nothing-there', id }
  if (heldBy === null || heldBy === 'dry') return { code: 'off-sale', component }
  return isBound ? { code: 'past-throw-out', id } : null
}

/**
 * A reading of what stands on the line or behind it, or of a batch that waits. Out of limits it is
 * recorded and takes the food off sale; food on time alone that was read warmer than its rule allows is
 * to be thrown out at once.
 */
export const decideReadTemperature = (
  state: ServiceState,
  command: z.infer<typeof readTemperatureSchema>,
  { now }: Circumstances,
): Decision =>
  whenOpen(state, (running) => {
    const { what, id, initials } = command
    const placed = placeOf(running, command)
    if (!placed) return refuse(noPlace(command))
    const heldBy = heldByAt(running, command, now)
    const known = { isBound: boundAt(running, what, id) !== undefined, heldBy }
    const unread =
      what === 'batch' ? batchUnread(running, placed, known) : stockUnread(placed, known)
    if (unread) return refuse(unread)
    const clock = placed.food?.clock ?? null
    const context = contextOf(heldBy, clock)
    const asked = { context, initials, now, newestAt: placed.toldOf }
    const taken = takenReading(running, command.reading, asked)
    if ('refusal' in taken) return taken
    const { reading } = taken
    return happened(
      ...(heldBy === 'hot' || heldBy === 'cold'
        ? heldReading(running, { what, id, heldBy }, reading, now)
        : timedReading(running, command, clock, reading)),
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
    const held = placeOf(running, command)
    if (!held) return refuse(noPlace(command))
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
      const heated = reheatedReading(running, command, { newest: held.toldOf ?? 0, now })
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
