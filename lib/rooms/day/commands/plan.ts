import { z } from 'zod'
import { civilDate, minuteOfDay } from '#lib/measure/civil.ts'
import {
  doorsOf,
  overlapping,
  thereProblem,
  twiceProblem,
} from '#lib/rooms/day/facts/plan-times.ts'
import { happened, refuse } from '#lib/service/commands/decision.ts'
import { defineCommand, type Told } from '#lib/service/commands/define.ts'
import { clockField, idField } from '#lib/service/commands/fields.ts'
import { dayField } from '#lib/service/commands/food-fields.ts'
import type { ServicePlan } from '#lib/service/events/plan-event.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import { isRunning } from '#lib/service/state.ts'
import { hashOf } from '#lib/service/state-hash.ts'
import { findItem } from '#lib/station/find.ts'
import { withoutReaders } from '#lib/station/label.ts'
import { portionsOf } from '#lib/station/portion.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

const MOST_GUESTS = 20_000
const guestsField = z.int().min(0).max(MOST_GUESTS)

const fields = {
  station: idField,
  /** A practice teaches no forecast; what is invented isn't planned. */
  kind: z.enum(['real', 'practice']),
  /** Civil date in the station's time zone. */
  on: dayField,
  doorsOpen: clockField,
  doorsClose: clockField,
  /** One of the document's bell schedules. */
  bells: idField.nullable().default(null),
  guests: z
    .strictObject({
      walkIn: guestsField.nullable(),
      /** What a group is called, which is nobody's name. */
      groups: z
        .array(
          z.strictObject({
            label: z.string().trim().min(1).max(40),
            guests: guestsField,
            at: clockField.optional(),
          }),
        )
        .max(40)
        .readonly(),
    })
    .default({ walkIn: null, groups: [] }),
  /** Ids of the items on sale; null: all of them. */
  items: z.array(idField).min(1).max(200).readonly().nullable().default(null),
  /** Who is there, an entry for each time that somebody is. */
  crew: z
    .array(
      z.strictObject({
        initials: z.string().trim().min(1).max(6),
        adult: z.boolean(),
        /** Civil date; the day of the service where left away. */
        on: dayField.optional(),
        from: clockField,
        to: clockField,
      }),
    )
    .max(120)
    .readonly()
    .default([]),
}

type Plan = Told<typeof fields>

/** What of it the document doesn't have. */
const unknownIn = ({ bells, items }: Plan, station: StationDocument): Refusal | null => {
  const rings = station.day.bells ?? []
  if (bells !== null && !rings.some(({ id }) => id === bells))
    return { code: 'unknown', what: 'bells', id: bells }
  const item = items?.find((id) => !findItem(station, id))
  return item === undefined ? null : { code: 'unknown', what: 'item', id: item }
}

const planOf = (
  command: Plan,
  station: StationDocument,
  now: number,
): { readonly plan: ServicePlan } | Refusal => {
  const { kind, on, doorsOpen, doorsClose, bells, guests, items } = command
  const { timeZone } = station
  const doors = doorsOf(command, { now, timeZone })
  if ('code' in doors) return doors
  const crew = command.crew.map(({ adult, on: day = on, from, to }, index) => ({
    id: `c${index + 1}`,
    adult,
    on: day,
    from,
    to,
  }))
  const problem =
    unknownIn(command, station) ??
    crew.map((one) => thereProblem(one, on, timeZone)).find((one) => one !== null) ??
    twiceProblem(command.crew.map(({ on: day = on, ...one }) => ({ ...one, on: day })))
  if (problem) return problem
  const groups = guests.groups.map(({ label, guests: count, at }) => ({
    label,
    guests: count,
    ...(at === undefined ? {} : { at }),
  }))
  const expected = { walkIn: guests.walkIn, groups }
  return {
    plan: { kind, on, doorsOpen, doorsClose, ...doors, bells, guests: expected, items, crew },
  }
}

/** Said again of one that is planned, it takes the place of what was said. */
export const plan = defineCommand({
  type: 'plan',
  who: [],
  stages: ['none', 'planned'],
  schema: fields,
  decide: (state, command, { now, service, station, plans }) => {
    if (isRunning(state) && state.station.id !== command.station)
      return refuse({ code: 'not-as-planned' })
    const newest = station(command.station)
    if (!newest) return refuse({ code: 'unknown', what: 'station', id: command.station })
    const document = isRunning(state) ? state.station : newest.document
    const planned = planOf(command, document, now)
    if ('code' in planned) return refuse(planned)
    const said = planned.plan
    const double = overlapping(service, said, plans?.(command.station) ?? [])
    if (double) return refuse(double)
    const minute = minuteOfDay(said.opensAt, document.timeZone)
    if (!isRunning(state))
      return happened({
        type: 'servicePlanned',
        service,
        plan: said,
        revision: newest.revision,
        station: withoutReaders(document),
        ...(newest.labels ? { labels: newest.labels } : {}),
        portions: portionsOf(document),
        minuteOfDay: minute,
      })
    return hashOf(said) === hashOf(state.plan)
      ? refuse({ code: 'already-so' })
      : happened({ type: 'planChanged', plan: said, minuteOfDay: minute })
  },
  sample: ({ at }, station) => [
    {
      station,
      kind: 'real' as const,
      on: civilDate(at, 'UTC'),
      doorsOpen: '11:00',
      doorsClose: '13:00',
    },
  ],
  rules: ['PL1', 'PL2', 'PL3', 'PL9', 'PL40'],
  example: {
    station: 'alder-hall',
    kind: 'real',
    on: '2026-11-26',
    doorsOpen: '11:20',
    doorsClose: '13:10',
    guests: { walkIn: 90, groups: [{ label: 'Grade 9', guests: 30, at: '11:40' }] },
    crew: [{ initials: 'KT', adult: true, from: '07:30', to: '14:00' }],
  },
  tells:
    ' (`kind`: `real` or `practice`; `bells`, one of the document’s schedules; `items`, ids of what is on sale, all where left away; somebody of `crew` may be there `on` a day before)',
})
