import { z } from 'zod'
import { notPresent } from '#lib/rooms/food/facts/cooling/who-stays.ts'
import { broughtBy } from '#lib/rooms/food/facts/probe-trail.ts'
import { takenHeatReading } from '#lib/rooms/food/facts/reading.ts'
import { batchWays, waysFor } from '#lib/rooms/food/facts/ways-out.ts'
import { coolingState } from '#lib/safety/cooling.ts'
import { resolveProblem } from '#lib/safety/holding.ts'
import { REHEATING_PLACES, reheated } from '#lib/safety/reheating.ts'
import { happened, refuse } from '#lib/service/commands/decision.ts'
import { defineCommand, type Told } from '#lib/service/commands/define.ts'
import { idField } from '#lib/service/commands/fields.ts'
import { heatReadingField, initialsField, momentField } from '#lib/service/commands/food-fields.ts'
import { PLACE_KINDS } from '#lib/service/events/food-event.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import type { OffSale } from '#lib/service/food-state.ts'
import { allStock } from '#lib/service/held-stock.ts'
import { noPlace, placeOf } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'

const fields = {
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
}

type Resolve = Told<typeof fields>

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
export const resolveOffSale = defineCommand({
  type: 'resolveOffSale',
  who: ['in-charge'],
  stages: ['planned', 'open'],
  schema: fields,
  decide: (state, command, { now }) => {
    const { what, id, way } = command
    const held = placeOf(state, command)
    if (!held) return refuse(noPlace(command))
    if (held.offSale === null) return refuse({ code: 'already-so' })
    const isOfCooling = held.offSale.why === 'cooling-missed'
    const ways = waysFor(state, what, id, now)
    const mayCoolAgain =
      isOfCooling && way === 'reheat' && batchWays(state, id, now).includes('reheat-and-cool-again')
    if (!mayCoolAgain && resolveProblem(way, true, ways))
      return refuse({
        code: 'way-not-allowed',
        ways: isOfCooling ? batchWays(state, id, now) : ways.map((one) => one.way),
      })
    const event = { type: 'offSaleResolved', what, id, way, reading: null, clock: null } as const
    if (way === 'discard') return happened(event)
    if (way === 'reheat') {
      const heated = reheatedReading(state, command, { newest: held.toldOf ?? 0, now })
      if ('refusal' in heated) return refuse(heated.refusal)
      const { reading } = heated
      const { presentUntil } = command
      // Only what missed its first stage is cooled again, so it was cooked.
      const from = 'cooked'
      const cooling = coolingState([reading], from, reading.at, limitsOf(state.station), null)
      const away = mayCoolAgain
        ? notPresent(state, id, { cooling, from, after: reading.at, presentUntil })
        : null
      if (away) return refuse(away)
      const stays = mayCoolAgain && presentUntil !== undefined ? { presentUntil } : {}
      return happened({
        ...event,
        reading,
        ...madeUntilOf(state, held.offSale),
        ...stays,
        ...broughtBy(state, command, reading),
      })
    }
    const timed = ways.find((one) => one.way === 'time-only')
    if (timed?.way !== 'time-only') return refuse({ code: 'way-not-allowed', ways: ['discard'] })
    const { startedAt, throwOutAt } = timed
    const clock = { rule: '4h', startedAt, throwOutAt } as const
    return happened({ ...event, clock, madeUntil: throwOutAt })
  },
  sample: (state) =>
    allStock(state).flatMap(({ what, id }) =>
      waysFor(state, what, id, state.at).map(({ way }) => ({ what, id, way })),
    ),
  rules: ['B13', 'B40', 'F14', 'F15', 'F24'],
  example: { what: 'pan', id: 'pan-rice', way: 'time-only' },
  tells:
    ' (`way`: `discard`, `time-only`, or `reheat` with `place`, `startedAt`, `reading` and `initials`; a batch that is cooled again also with `presentUntil`)',
})
