/** The hot or cold shelf of made food: read like a pan, and what stands there decided on. */
import { z } from 'zod'
import { INVENTED_INITIALS, readingInLimits } from '#lib/rooms/food/facts/invented-readings.ts'
import { takenReading } from '#lib/rooms/food/facts/reading.ts'
import { inLimits } from '#lib/safety/holding.ts'
import { happened, refuse } from '#lib/service/commands/decision.ts'
import { defineCommand } from '#lib/service/commands/define.ts'
import { initialsField, readingField } from '#lib/service/commands/food-fields.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import { shelfHeldBy } from '#lib/service/shelf.ts'

/** A reading of what stands there longest. Out of limits it is recorded, and holds what stands there. */
export const readShelf = defineCommand({
  type: 'readShelf',
  who: ['hand-over'],
  stages: ['open'],
  schema: { reading: readingField, initials: initialsField },
  decide: (state, command, { now }) => {
    const heldBy = shelfHeldBy(state)
    if (heldBy === null) return refuse({ code: 'not-read-here' })
    const taken = takenReading(state, command.reading, {
      context: heldBy === 'hot' ? 'hot-holding' : 'cold-holding',
      initials: command.initials,
      now,
      newestAt: state.shelf?.newest.at ?? null,
    })
    if ('refusal' in taken) return taken
    const { reading } = taken
    const isIn = inLimits(heldBy, reading, limitsOf(state.station))
    return happened({ type: 'shelfRead', reading, inLimits: isIn })
  },
  sample: (state) => {
    const held = shelfHeldBy(state)
    const reading = held && readingInLimits(state.station, { held })
    return reading ? [{ reading, initials: INVENTED_INITIALS }] : []
  },
  rules: ['F65', 'F66', 'F67'],
  example: {
    reading: { tenths: 1400, scale: 'F', probe: 'probe 1', where: 'middle-stirred' },
    initials: 'KT',
  },
  tells:
    ': of what stands longest on a shelf that the document calls hot or cold; see [readings](#readings)',
})

/** The person in charge says what becomes of it: made food isn't reheated. */
export const resolveShelf = defineCommand({
  type: 'resolveShelf',
  who: ['in-charge'],
  stages: ['open'],
  schema: { way: z.enum(['discard', 'time-only']) },
  decide: ({ shelf, station }, { way }) => {
    if (!shelf?.offSale) return refuse({ code: 'already-so' })
    return way === 'time-only' && !station.safety.timeProcedure
      ? refuse({ code: 'way-not-allowed', ways: ['discard'] })
      : happened({ type: 'shelfResolved', way })
  },
  sample: () => [{ way: 'discard' as const }],
  rules: ['F67'],
  example: { way: 'discard' },
  tells: ' (`way`: `discard` or `time-only`, of what stood there as it was read out of limits)',
})
