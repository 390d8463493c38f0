import { z } from 'zod'
import { coolingAt, endMark, endsAt, keptBy } from '#lib/rooms/day/facts/ends/food-history.ts'
import { goesAlong } from '#lib/rooms/day/facts/ends/goes-along.ts'
import { thrownOut } from '#lib/rooms/day/facts/ends/thrown-out.ts'
import { toAnswer } from '#lib/rooms/day/facts/ends/to-answer.ts'
import { coolsFrom, notPresent } from '#lib/rooms/food/facts/cooling/who-stays.ts'
import { heldReading } from '#lib/rooms/food/facts/held-reading.ts'
import { INVENTED_INITIALS } from '#lib/rooms/food/facts/invented-readings.ts'
import { takenReading } from '#lib/rooms/food/facts/reading.ts'
import { coolingState } from '#lib/safety/cooling.ts'
import { ENDS, type End, HOW_MUCH, isSetAside } from '#lib/safety/ends.ts'
import type { Reading } from '#lib/safety/readings.ts'
import { type Decision, happened, refuse, refuseHaving } from '#lib/service/commands/decision.ts'
import { defineCommand, type Told } from '#lib/service/commands/define.ts'
import { amountField, idField } from '#lib/service/commands/fields.ts'
import {
  dateFields,
  initialsField,
  momentField,
  readingField,
} from '#lib/service/commands/food-fields.ts'
import type { ServiceEvent } from '#lib/service/events/event.ts'
import { PLACE_KINDS } from '#lib/service/events/food-event.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import { boundAt } from '#lib/service/held-stock.ts'
import { noPlace, type Placed, placeOf } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'
import { openBuilds } from '#lib/service/tickets.ts'
import { componentOf } from '#lib/station/find.ts'

const { preparedOn, useBy } = dateFields

const fields = {
  what: z.enum(PLACE_KINDS),
  id: idField,
  end: z.enum(ENDS),
  /** As it was found; all that was counted to be there where left away. */
  amount: amountField.optional(),
  how: z.enum(HOW_MUCH),
  /** What is set aside is called so, made on the device; else after the service, counted on. */
  lot: idField.optional(),
  /** Taken now: the start of a cooling is. */
  reading: readingField.optional(),
  /** Of what cools: until when somebody is there who can read it. */
  presentUntil: momentField.optional(),
  preparedOn,
  useBy,
  initials: initialsField,
}

type EndFood = Told<typeof fields>

/** Of one making, a ton or so many pieces and no more. */
const MOST_OF_BATCH = 1_000_000_000

/** What somebody may have found there; null for what can't be. */
const amountIn = (place: Placed, { amount = place.amount }: EndFood): number | null => {
  const most = place.stage === 'making' ? MOST_OF_BATCH : Math.max(place.amount * 2, place.full)
  return Number.isSafeInteger(amount) && amount >= 0 && amount <= most ? amount : null
}

interface Read {
  readonly reading: Reading | null
  readonly events: readonly ServiceEvent[]
  /** It is known to be out of its limits, or that nobody knew for too long. */
  readonly isOff: boolean
}

const NOT_READ: Read = { reading: null, events: [], isOff: false }

/** What is read of it as it comes to its end counts as any reading. */
const readNow = (
  state: RunningState,
  place: Placed,
  { what, id, reading: given, initials }: EndFood,
  now: number,
): Read | Extract<Decision, { readonly refusal: unknown }> => {
  const heldBy = keptBy(state, place, now)
  if (given === undefined) return NOT_READ
  if (heldBy === 'cooling') return { refusal: { code: 'still-cooling', batch: id } }
  if (heldBy !== 'hot' && heldBy !== 'cold') return { refusal: { code: 'not-read-here' } }
  const context = heldBy === 'hot' ? 'hot-holding' : 'cold-holding'
  const taken = takenReading(state, given, { context, initials, now, newestAt: place.toldOf })
  if ('refusal' in taken) return taken
  const { reading } = taken
  const events = heldReading(state, { what, id, heldBy }, reading, now)
  const isOff =
    events.some((one) => one.type === 'takenOffSale') ||
    (place.offSale !== null && !events.some((one) => one.type === 'temperatureRead' && one.lifts))
  return { reading, events, isOff }
}

/** Guests that ordered it wait for it yet: so many of their builds. */
const owedTo = (state: RunningState, { component, amount }: Placed): number => {
  const builds = openBuilds(state).filter(
    ({ build }) => build.state !== 'made' && (build.takes[component] ?? 0) > 0,
  )
  const owed = builds.reduce((sum, { build }) => sum + (build.takes[component] ?? 0), 0)
  const others = toAnswer(state)
    .filter((one) => one.component === component && one.what !== 'batch')
    .reduce((sum, one) => sum + one.amount, 0)
  return owed > others - amount ? builds.length : 0
}

/**
 * A cooling begins with a reading, and goes on where somebody stays who can take the others: of what
 * cools already, from now on.
 */
const coolingLacks = (
  state: RunningState,
  place: Placed,
  { reading, presentUntil }: { readonly reading: Reading | null; readonly presentUntil?: number },
  now: number,
): Decision | null => {
  const { station } = state
  const own = place.what === 'batch' ? state.batches[place.id] : undefined
  const from = coolsFrom(componentOf(station, place.component))
  const cooling = reading
    ? coolingState([reading], from, reading.at, limitsOf(station), null)
    : coolingAt(state, place, now)
  if (!cooling) return refuse({ code: 'end-asks-reading', id: place.id, end: 'cool' })
  const away = notPresent(state, place.id, {
    cooling,
    from,
    after: reading?.at ?? now,
    presentUntil: presentUntil ?? own?.presentUntil,
  })
  return away ? refuse(away) : null
}

const comesTo = (
  state: RunningState,
  place: Placed,
  command: EndFood,
  {
    end,
    amount,
    now,
    service,
  }: {
    readonly end: Exclude<End, 'throw-out'>
    readonly amount: number
    readonly now: number
    readonly service: string
  },
): Decision => {
  const { what, id, how } = command
  const owed = owedTo(state, place)
  if (owed > 0) return refuse({ code: 'builds-open', count: owed })
  const read = readNow(state, place, command, now)
  if ('refusal' in read) return read
  const found = { read: read.reading !== null && !read.isOff, dates: command }
  const dated = endMark(state, place, found, now)
  if ('refusal' in dated) return refuse(dated.refusal)
  const it = endsAt(state, place, now, found).find((one) => one.end === end)
  if (read.isOff) return refuseHaving({ code: 'off-sale', component: place.component }, read.events)
  if (!it?.offered)
    return refuse({
      code: 'end-not-offered',
      id,
      end,
      why: it?.why ?? 'unknown',
      paragraph: it?.paragraph ?? null,
    })
  if (end === 'cool') {
    const { presentUntil } = command
    const told = { reading: read.reading, ...(presentUntil === undefined ? {} : { presentUntil }) }
    const lacks = coolingLacks(state, place, told, now)
    if (lacks) return lacks
  }
  const { component } = place
  const ended = { type: 'foodEnded', what, id, end, component, amount, how } as const
  if (!isSetAside(end)) return happened(...read.events, ended)
  const lot = command.lot ?? `${service}.${(state.ends ?? []).length + 1}`
  const along = goesAlong(state, place, {
    end,
    mark: dated.mark,
    reading: read.reading,
    presentUntil: command.presentUntil,
    useBy: command.useBy,
    now,
  })
  return happened(...read.events, { ...ended, lot, along })
}

/**
 * Food comes to an end of the service, as its history allows: cold to its date mark, dry, cooled in the
 * larder, frozen, eaten by the crew, or thrown out, which it always may be.
 */
export const endFood = defineCommand({
  type: 'endFood',
  who: [],
  stages: ['planned', 'open'],
  schema: fields,
  decide: (state, command, { now, service }) => {
    const { what, id, end, how, initials } = command
    const place = placeOf(state, command)
    if (!place) return refuse(noPlace(command))
    if (initials === undefined) return refuse({ code: 'not-initialled' })
    const { stage, component } = place
    if (stage === 'gone') return refuse({ code: 'already-so' })
    const isAwaited = boundAt(state, what, id) !== undefined || place.offSale !== null
    if (stage === 'empty' && !isAwaited) return refuse({ code: 'nothing-there', id })
    const amount = amountIn(place, command)
    const most = Math.max(place.amount * 2, place.full)
    if (amount === null)
      return refuse({ code: 'absurd-amount', pan: what === 'batch' ? component : id, most })
    if (end === 'throw-out') return happened(thrownOut(state, place, { amount, how }, now))
    if (amount === 0) return refuse({ code: 'nothing-there', id })
    return comesTo(state, place, command, { end, amount, now, service })
  },
  sample: (state) =>
    toAnswer(state).map(
      ({ what, id }) =>
        ({ what, id, end: 'throw-out', how: 'not-checked', initials: INVENTED_INITIALS }) as const,
    ),
  rules: ['EN10', 'EN11', 'EN13', 'EN14'],
  example: {
    what: 'pan',
    id: 'pan-slaw',
    end: 'cold',
    amount: 900_000,
    how: 'weighed',
    lot: 'slaw-1126',
    initials: 'KT',
  },
  tells:
    ' (`end`: `cold`, `dry`, `cool`, `freeze`, `crew` or `throw-out`; `how`: `weighed`, `counted`, `eye` or `not-checked`; to cool hot food a `reading` and `presentUntil`; `preparedOn` and `useBy` where nobody dated it)',
})
