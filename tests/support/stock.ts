/** A stocked service on the demo station, with all that its scenario says of making again. */

import type { z } from 'zod'
import alderHall from '#fixtures/stations/alder-hall.json' with { type: 'json' }
import scenario from '#fixtures/stations/alder-hall-scenario.json' with { type: 'json' }
import type { Remake } from '#lib/estimate/batch-timing.ts'
import type { Circumstances, Decision } from '#lib/service/commands/decision.ts'
import { type BuildChoice, usualChoice } from '#lib/service/events/build-choice.ts'
import type { Recorded, ServiceEvent, ServiceOpened } from '#lib/service/events/event.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import { isRunning, NOT_OPENED, type RunningState, type ServiceState } from '#lib/service/state.ts'
import { decide } from '#lib/spine/decide.ts'
import { evolve } from '#lib/spine/evolve.ts'
import { commandSchema } from '#lib/spine/registry.ts'
import { itemOf, pansOf } from '#lib/station/find.ts'
import { portionsOf } from '#lib/station/portion.ts'
import { stationSchema } from '#lib/station/schema.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { type ToldCode, toldCode } from '#tests/support/refusal-code.ts'

const facts: Readonly<
  Record<string, { readonly unitCents: number; readonly remake: Remake | null }>
> = scenario.components

export type Given = z.input<typeof commandSchema>

const deepFreeze = <Value>(value: Value): Value => {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value)
    Object.values(value).forEach(deepFreeze)
  }
  return value
}

const demoStation = stationSchema.parse(alderHall)

/** The demo station with costs, ways of making again, and tools that lie by. */
export const stockedStation: StationDocument = deepFreeze({
  ...demoStation,
  components: demoStation.components.map((one) => {
    const own = facts[one.id]
    return {
      ...one,
      costCents: own?.unitCents ?? null,
      remake: own?.remake ? { ...own.remake, where: 'the kitchen', by: 'a cook' } : null,
    }
  }),
  tools: [
    { id: 'spare-20', name: 'spare #20', tool: { tool: 'scoop', number: 20 }, usualFor: null },
    { id: 'spare-30', name: 'spare #30', tool: { tool: 'scoop', number: 30 }, usualFor: null },
    { id: 'tuna-8', name: 'tuna #8', tool: { tool: 'scoop', number: 8 }, usualFor: 'tuna' },
    { id: 'ladle-2', name: '2 fl oz ladle', tool: { tool: 'ladle', flOz: 2 }, usualFor: null },
  ],
  day: { ...demoStation.day, closes: '13:15', assemblers: 2 },
})

/** 10:45 at the demo station, which is in Chicago. */
export const OPENED = Date.parse('2026-11-25T16:45:00Z')
/** 13:15 there. */
export const CLOSES = Date.parse('2026-11-25T19:15:00Z')
export const MINUTE = 60_000

export interface Stocked {
  readonly state: RunningState
  readonly events: readonly Recorded[]
}

const fold = (
  { state, events }: { readonly state: RunningState | null; readonly events: readonly Recorded[] },
  happened: readonly ServiceEvent[],
  at: number,
): Stocked => {
  const recorded = happened.map(
    (event, index): Recorded => ({
      ...event,
      position: events.length + index + 1,
      at,
      command: `c-${events.length + 1}`,
    }),
  )
  const next = recorded.reduce(
    (so, event) => evolve(deepFreeze(so), deepFreeze(event)),
    state ?? NOT_OPENED,
  )
  if (!isRunning(next)) throw new Error('the service was never opened')
  return { state: next, events: [...events, ...recorded] }
}

/** Events, at so many minutes after the opening. */
export const happens = (
  told: Stocked,
  minutes: number,
  ...events: readonly ServiceEvent[]
): Stocked => fold(told, events, Math.max(told.state.at, OPENED + minutes * MINUTE))

export const openedAs = (over: Partial<ServiceOpened> = {}): Stocked =>
  fold(
    { state: null, events: [] },
    [
      {
        type: 'serviceOpened',
        service: 's-lunch',
        kind: 'real',
        revision: 3,
        station: stockedStation,
        portions: portionsOf(stockedStation),
        closesItselfAt: null,
        minuteOfDay: 645,
        closesAt: CLOSES,
        guestsExpected: 125,
        assemblers: 2,
        ...over,
      },
    ],
    OPENED,
  )

export const portionOf = (component: string): number =>
  portionsOf(stockedStation)[component]?.amount ?? Number.NaN

export const panFor = (component: string): string =>
  pansOf(stockedStation).find((pan) => pan.component === component)?.id ?? ''

/** A load that nothing has to be known of any more. */
export const load = (component: string, portions: number): ServiceEvent => {
  const held = stockedStation.components.find((one) => one.id === component)?.held ?? 'dry'
  return {
    type: 'panLoaded',
    pan: panFor(component),
    amount: portions * portionOf(component),
    food: { heldBy: held, clock: null, dateMark: null, finishedAt: OPENED, guarded: false },
    reading: null,
    batch: null,
    from: null,
  }
}

/** Opened, and every pan loaded: as usual, or with these portions. */
export const stocked = (
  portions: Readonly<Record<string, number>> = {},
  over: Partial<ServiceOpened> = {},
): Stocked =>
  happens(
    openedAs(over),
    0,
    ...pansOf(stockedStation).map((pan) =>
      load(pan.component, portions[pan.component] ?? pan.usualPortions),
    ),
  )

/** What a command does, decided on frozen input. */
export const deciding = (
  { state }: { readonly state: ServiceState },
  command: Given,
  over: Partial<Circumstances> = {},
): Decision =>
  decide(deepFreeze(state), deepFreeze(commandSchema.parse(command)), {
    now: state.at,
    by: 'lead',
    service: 's-lunch',
    otherIsOpen: false,
    station: (id) => (id === stockedStation.id ? { revision: 3, document: stockedStation } : null),
    newestLabels: {},
    ...over,
  })

export const refusalOf = (decision: Decision): Refusal | null =>
  'refusal' in decision ? decision.refusal : null

export const codeOf = (decision: Decision): ToldCode | null => {
  const refusal = refusalOf(decision)
  return refusal && toldCode(refusal)
}

export const eventsOf = (decision: Decision): readonly ServiceEvent[] =>
  'events' in decision ? decision.events : []

/** An item as a guest without needs usually takes it, with some parts otherwise. */
export const choice = (
  item: string,
  parts: BuildChoice['parts'] = {},
  over: Partial<BuildChoice> = {},
): BuildChoice => {
  const usual = usualChoice(itemOf(stockedStation, item))
  return { ...usual, ...over, parts: { ...usual.parts, ...parts } }
}

export const order = (...builds: BuildChoice[]): Given => ({ type: 'send', builds, readBack: true })

/** "1A" as the fields of a command. */
export const at = (name: string): { ticket: number; letter: string } => ({
  ticket: Number.parseInt(name, 10),
  letter: name.slice(-1),
})

/** Commands that must be accepted, at so many minutes after the opening. */
export const give = (told: Stocked, minutes: number, ...commands: readonly Given[]): Stocked =>
  commands.reduce((so, command) => {
    const now = Math.max(so.state.at, OPENED + minutes * MINUTE)
    const decision = deciding(so, command, { now, by: 'in-charge' })
    if ('refusal' in decision)
      throw new Error(`${command.type} was refused: ${JSON.stringify(decision.refusal)}`)
    return fold(so, decision.events, now)
  }, told)
