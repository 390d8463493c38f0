/** The hot or cold shelf of made food: read like a pan, and what stands there decided on. */
import { z } from 'zod'
import { inLimits } from '#lib/safety/holding.ts'
import {
  type Circumstances,
  type Decision,
  happened,
  refuse,
  whenOpen,
} from '#lib/service/commands/decision.ts'
import { initialsField, readingField } from '#lib/service/commands/food-fields.ts'
import { takenReading } from '#lib/service/commands/reading.ts'
import { whenInCharge } from '#lib/service/commands/when-in-charge.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import { shelfHeldBy } from '#lib/service/shelf.ts'
import type { ServiceState } from '#lib/service/state.ts'

export const readShelfSchema = z.strictObject({
  type: z.literal('readShelf'),
  reading: readingField,
  initials: initialsField,
})
export const resolveShelfSchema = z.strictObject({
  type: z.literal('resolveShelf'),
  way: z.enum(['discard', 'time-only']),
})

/** A reading of what stands there longest. Out of limits it is recorded, and holds what stands there. */
export const decideReadShelf = (
  state: ServiceState,
  command: z.infer<typeof readShelfSchema>,
  { now }: Circumstances,
): Decision =>
  whenOpen(state, (running) => {
    const heldBy = shelfHeldBy(running)
    if (heldBy === null) return refuse({ code: 'shelf-not-held' })
    const taken = takenReading(running, command.reading, {
      context: heldBy === 'hot' ? 'hot-holding' : 'cold-holding',
      initials: command.initials,
      now,
      newestAt: running.shelf?.newest.at ?? null,
    })
    if ('refusal' in taken) return taken
    const { reading } = taken
    const isIn = inLimits(heldBy, reading, limitsOf(running.station))
    return happened({ type: 'shelfRead', reading, inLimits: isIn })
  })

/** The person in charge says what becomes of it: made food isn't reheated. */
export const decideResolveShelf = (
  state: ServiceState,
  { way }: z.infer<typeof resolveShelfSchema>,
  circumstances: Circumstances,
): Decision =>
  whenInCharge(state, circumstances, ({ shelf, station }) => {
    if (!shelf?.offSale) return refuse({ code: 'already-so' })
    return way === 'time-only' && !station.safety.timeProcedure
      ? refuse({ code: 'way-not-allowed', ways: ['discard'] })
      : happened({ type: 'shelfResolved', way })
  })
