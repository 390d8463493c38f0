import { z } from 'zod'
import { heldReading, unreadUntil } from '#lib/rooms/food/facts/held-reading.ts'
import { INVENTED_INITIALS, readingInLimits } from '#lib/rooms/food/facts/invented-readings.ts'
import { keptAs } from '#lib/rooms/food/facts/kept-as.ts'
import { stockOffSale } from '#lib/rooms/food/facts/off-sale.ts'
import { broughtBy } from '#lib/rooms/food/facts/probe-trail.ts'
import { takenReading } from '#lib/rooms/food/facts/reading.ts'
import { startClock } from '#lib/safety/time-control.ts'
import { happened, refuse, refuseHaving } from '#lib/service/commands/decision.ts'
import { defineCommand, type Told } from '#lib/service/commands/define.ts'
import { COLD_READING } from '#lib/service/commands/example-parts.ts'
import { idField } from '#lib/service/commands/fields.ts'
import { initialsField, momentField, readingField } from '#lib/service/commands/food-fields.ts'
import { PLACE_KINDS } from '#lib/service/events/food-event.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import { allStock, boundAt, isUsable } from '#lib/service/held-stock.ts'
import { componentAt, noPlace, placeOf } from '#lib/service/place.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { RunningState } from '#lib/service/state.ts'

const fields = {
  what: z.enum(PLACE_KINDS),
  id: idField,
  /** When it left heat or cold: in the prep kitchen, not at the line. */
  leftAt: momentField,
  from: z.enum(['hot', 'cold', 'room']),
  rule: z.enum(['4h', '4h-cool', '6h']),
  reading: readingField,
  initials: initialsField,
}

type StartTimeClock = Told<typeof fields>

/** Whether there is such food, in heat or cold until now. */
const cannotStart = (state: RunningState, { what, id }: StartTimeClock): Refusal | null => {
  const placed = placeOf(state, { what, id })
  if (!placed) return noPlace({ what, id })
  const { component, stage, offSale, food } = placed
  if (stage === 'empty') return { code: 'nothing-there', id }
  if (stage === 'gone' || offSale || boundAt(state, what, id))
    return { code: 'off-sale', component }
  if (food?.clock) return { code: 'already-so' }
  return what === 'batch' || isUsable(state, what, id)
    ? null
    : stockOffSale(state, what, id, component)
}

/**
 * Time alone runs from leaving heat or cold, with a reading that shows it was in its limits then. One
 * that was out of them starts no clock, and is a reading of that food: it goes off sale.
 */
export const startTimeClock = defineCommand({
  type: 'startTimeClock',
  who: [],
  stages: ['planned', 'open'],
  schema: fields,
  decide: (state, command, { now }) => {
    const refusal = cannotStart(state, command)
    if (refusal) return refuse(refusal)
    const { what, id, leftAt, from, rule } = command
    const { heldBy, mayLeave, roomSince = now } = keptAs(state, command, now)
    if (!mayLeave.includes(from) || (from === 'room' && leftAt > roomSince))
      return refuse({ code: 'cannot-start-clock', why: 'held-otherwise' })
    const taken = takenReading(state, command.reading, {
      context: 'time-start',
      initials: command.initials,
      now,
      newestAt: null,
    })
    if ('refusal' in taken) return taken
    const started = startClock(
      {
        rule,
        from,
        leftAt,
        readings: [taken.reading],
        procedure: state.station.safety.timeProcedure,
      },
      now,
      limitsOf(state.station),
    )
    if (!started.ok) {
      const refusal: Refusal = { code: 'cannot-start-clock', why: started.why }
      return started.why === 'start-out-of-limits' && heldBy !== null
        ? refuseHaving(refusal, heldReading(state, { what, id, heldBy }, taken.reading, now))
        : refuse(refusal)
    }
    // What stands at the line is off sale by the time that its reading is missed.
    const unread =
      what === 'batch' && heldBy !== null
        ? unreadUntil(state, { id, heldBy }, taken.reading, now)
        : []
    if (unread.length > 0)
      return refuseHaving(
        { code: 'off-sale', component: componentAt(state, what, id) ?? id },
        unread,
      )
    const event = {
      type: 'timeClockStarted',
      what,
      id,
      from,
      clock: started.clock,
      reading: taken.reading,
      ...broughtBy(state, command, taken.reading),
    } as const
    return happened(event)
  },
  sample: (state) =>
    allStock(state).flatMap(({ what, id, stock }) => {
      const from = stock.food?.heldBy
      if (from !== 'hot' && from !== 'cold') return []
      const reading = readingInLimits(state.station, { held: from })
      const started = { what, id, leftAt: state.at, from, rule: '4h' } as const
      return reading ? [{ ...started, reading, initials: INVENTED_INITIALS }] : []
    }),
  rules: ['B15', 'B35', 'F16', 'F17', 'F20'],
  example: {
    what: 'batch',
    id: 'b1',
    leftAt: 1_795_602_000_000,
    from: 'cold',
    rule: '4h',
    reading: COLD_READING,
    initials: 'KT',
  },
  tells:
    ' (`what`: `pan`, `backup` or `batch`; `from`: `hot`, `cold` or `room`; `rule`: `4h`, `4h-cool` or `6h`)',
})
