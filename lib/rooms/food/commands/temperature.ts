import { z } from 'zod'
import { heldReading } from '#lib/rooms/food/facts/held-reading.ts'
import { INVENTED_INITIALS, readingInLimits } from '#lib/rooms/food/facts/invented-readings.ts'
import { heldByAt } from '#lib/rooms/food/facts/place-now.ts'
import { takenReading } from '#lib/rooms/food/facts/reading.ts'
import { timedReading } from '#lib/rooms/food/facts/timed-reading.ts'
import type { HeldBy } from '#lib/safety/holding.ts'
import type { LoadProblem } from '#lib/safety/load.ts'
import type { ReadingContext } from '#lib/safety/readings.ts'
import { happened, refuse } from '#lib/service/commands/decision.ts'
import { defineCommand } from '#lib/service/commands/define.ts'
import { HOT_READING } from '#lib/service/commands/example-parts.ts'
import { idField } from '#lib/service/commands/fields.ts'
import { initialsField, readingField } from '#lib/service/commands/food-fields.ts'
import { type HeldFood, PLACE_KINDS } from '#lib/service/events/food-event.ts'
import { allStock, boundAt } from '#lib/service/held-stock.ts'
import { noPlace, type Placed, placeOf } from '#lib/service/place.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { RunningState } from '#lib/service/state.ts'
import { componentOf } from '#lib/station/find.ts'

const fields = {
  what: z.enum(PLACE_KINDS).default('pan'),
  id: idField,
  reading: readingField,
  initials: initialsField,
}

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
export const readTemperature = defineCommand({
  type: 'readTemperature',
  who: ['assembly'],
  stages: ['planned', 'open'],
  schema: fields,
  decide: (state, command, { now }) => {
    const { what, id, initials } = command
    const placed = placeOf(state, command)
    if (!placed) return refuse(noPlace(command))
    const heldBy = heldByAt(state, command, now)
    const known = { isBound: boundAt(state, what, id) !== undefined, heldBy }
    const unread = what === 'batch' ? batchUnread(state, placed, known) : stockUnread(placed, known)
    if (unread) return refuse(unread)
    const clock = placed.food?.clock ?? null
    const context = contextOf(heldBy, clock)
    const asked = { context, initials, now, newestAt: placed.toldOf }
    const taken = takenReading(state, command.reading, asked)
    if ('refusal' in taken) return taken
    const { reading } = taken
    return happened(
      ...(heldBy === 'hot' || heldBy === 'cold'
        ? heldReading(state, { what, id, heldBy }, reading, now)
        : timedReading(state, command, clock, reading)),
    )
  },
  sample: (state) =>
    allStock(state).flatMap(({ what, id, stock }) => {
      const held = stock.food?.heldBy
      const reading =
        held === 'hot' || held === 'cold' ? readingInLimits(state.station, { held }) : undefined
      return reading ? [{ what, id, reading, initials: INVENTED_INITIALS }] : []
    }),
  rules: ['B12', 'B14', 'B28', 'B32', 'F42', 'F78', 'S191'],
  example: { what: 'pan', id: 'pan-rice', reading: HOT_READING, initials: 'KT' },
  tells: ' (`what`: `pan`, `backup` or `batch`)',
})
