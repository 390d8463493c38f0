/** A service on the demo station, told in commands: given these, when this one, then what. */
import type { z } from 'zod'
import alderHall from '#fixtures/stations/alder-hall.json' with { type: 'json' }
import type { Circumstances, Decision } from '#lib/service/commands/decision.ts'
import { type BuildChoice, type PartChoice, usualChoice } from '#lib/service/events/build-choice.ts'
import type { Recorded, ServiceEvent } from '#lib/service/events/event.ts'
import { componentIn } from '#lib/service/held-stock.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import {
  type Build,
  isRunning,
  NOT_OPENED,
  type RunningState,
  type ServiceState,
} from '#lib/service/state.ts'
import { findBuild } from '#lib/service/tickets.ts'
import { decide } from '#lib/spine/decide.ts'
import { evolve } from '#lib/spine/evolve.ts'
import { batchCommands, loadFields, openingCommands } from '#lib/spine/opening-commands.ts'
import { type Command, commandSchema } from '#lib/spine/registry.ts'
import type { Need } from '#lib/station/codes/codes.ts'
import { componentOf, itemOf } from '#lib/station/find.ts'
import { portionsOf } from '#lib/station/portion.ts'
import { stationSchema } from '#lib/station/schema.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { type ToldCode, toldCode } from '#tests/support/refusal-code.ts'

/** A command as it comes from outside, before its defaults. */
export type Given = z.input<typeof commandSchema>

export interface Told {
  readonly state: ServiceState
  readonly events: readonly Recorded[]
}

export const demoStation: StationDocument = stationSchema.parse(alderHall)
export const portions = portionsOf(demoStation)

/** Ten in the morning at the demo station, which is in Chicago: 2026-11-25 10:00 CST. */
export const OPENED_AT = Date.parse('2026-11-25T16:00:00Z')
const BETWEEN_COMMANDS_MS = 10_000

/** What each batch gave beyond what the pans take, for tests that change pans. */
const SPARE_PORTIONS = 1_000

export const deepFreeze = <Value>(value: Value): Value => {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value)
    Object.values(value).forEach(deepFreeze)
  }
  return value
}

deepFreeze(demoStation)

export const circumstances = (over: Partial<Circumstances> = {}): Circumstances => ({
  now: OPENED_AT,
  by: 'lead',
  service: 's-lunch',
  otherIsOpen: false,
  station: (id) => (id === demoStation.id ? { revision: 3, document: demoStation } : null),
  newestLabels: {},
  ...over,
})

export const NOTHING: Told = { state: NOT_OPENED, events: [] }

export const parsed = (command: Given): Command => deepFreeze(commandSchema.parse(command))

/** What a command does, decided on frozen input. */
export const when = (
  { state, events }: Told,
  command: Given,
  over: Partial<Circumstances> = {},
): Decision => {
  const now = OPENED_AT + events.length * BETWEEN_COMMANDS_MS
  const known = { now, newestLabels: {}, ...over }
  return decide(deepFreeze(state), parsed(command), circumstances(known))
}

/** Folds events onto what was told. */
export const happening = (
  told: Told,
  events: readonly ServiceEvent[],
  command: string | null = `c-${told.events.length + 1}`,
): Told => {
  const at = OPENED_AT + told.events.length * BETWEEN_COMMANDS_MS
  const recorded = events.map(
    (event, index): Recorded => ({
      ...event,
      position: told.events.length + index + 1,
      at,
      command,
    }),
  )
  return {
    state: recorded.reduce(
      (state, event) => evolve(deepFreeze(state), deepFreeze(event)),
      told.state,
    ),
    events: [...told.events, ...recorded],
  }
}

/** Commands that must be accepted, one after the other. */
export const onward = (told: Told, ...commands: Given[]): Told =>
  commands.reduce((so, command) => {
    const decision = when(so, command, { by: 'in-charge' })
    if ('refusal' in decision)
      throw new Error(`${command.type} was refused: ${JSON.stringify(decision.refusal)}`)
    return happening(so, decision.events)
  }, told)

/** An amount in a component's own unit. */
export const ofPortions = (component: string, count: number): number =>
  count * (portions[component]?.amount ?? Number.NaN)

export const openedService = (kind: 'demo' | 'real' = 'real'): Told =>
  onward(NOTHING, { type: 'open', station: demoStation.id, kind })

/** Opened, and every pan loaded as usual. */
export const loadedService = (kind: 'demo' | 'real' = 'real'): Told =>
  onward(
    openedService(kind),
    ...openingCommands(demoStation, OPENED_AT, { backups: [], spare: SPARE_PORTIONS }),
  )

const LOADED = loadedService()

/** Protected back-up pans that the demo station has. */
const BACKUPS = demoStation.backups.filter((one) => one.protected)

/** Batches for a service that nothing was cooked for yet. */
export const batches = (): readonly Given[] =>
  demoStation.components.flatMap((component) =>
    batchCommands(demoStation, component, ofPortions(component.id, SPARE_PORTIONS), {
      now: OPENED_AT,
    }),
  )

/** What a load says beside its amount: the batch it comes from, and its reading. */
export const foodOf = (component: string, cleaned?: boolean) =>
  loadFields(demoStation, componentOf(demoStation, component), { now: OPENED_AT, cleaned })

const componentAt = (pan: string): string => componentIn(demoStation, pan) ?? 'rice'

/** Opened, and what is cooked there is ready to be loaded. */
export const cookedService = (kind: 'demo' | 'real' = 'real'): Told =>
  onward(openedService(kind), ...batches())

/** An empty pan is loaded, out of the batch of the opening and with a reading in limits. */
export const load = (pan: string, amount: number, washed?: boolean): Given => ({
  type: 'load',
  pan,
  amount,
  ...(washed === undefined ? {} : { washed }),
  ...foodOf(componentAt(pan)),
})

/** Another pan for the one on the line, loaded as above. */
export const changePan = (pan: string, amount: number): Given => ({
  type: 'changePan',
  pan,
  amount,
  ...foodOf(componentAt(pan)),
})

/** A back-up pan stands ready with so many portions. */
export const backupReady = (component: string, portions = 12): Given => ({
  type: 'setBackup',
  component,
  ready: true,
  amount: ofPortions(component, portions),
  ...foodOf(component, true),
})

/** A loaded service in which the person in charge is signed on and every back-up stands ready. */
const READY = onward(
  LOADED,
  { type: 'signOn' },
  ...BACKUPS.map(({ component }) => backupReady(component)),
)

/** A service that keeps apart, after these commands. */
export const ready = (...commands: Given[]): Told => onward(READY, ...commands)

/** A loaded service after these commands. */
export const given = (...commands: Given[]): Told => onward(LOADED, ...commands)

const partOf = (word: 'in' | 'side' | 'no' | number): PartChoice => {
  if (word === 'no') return { placement: 'no', portions: 0, because: 'asked' }
  return typeof word === 'number'
    ? { placement: 'in', portions: word, because: 'asked' }
    : { placement: word, portions: 1, because: 'asked' }
}

/** The usual choice with some parts otherwise: a placement, or a number of portions in it. */
export const choose = (
  item: string,
  parts: Readonly<Record<string, 'in' | 'side' | 'no' | number>> = {},
  over: Partial<BuildChoice> = {},
): BuildChoice => {
  const usual = usualChoice(itemOf(demoStation, item))
  return {
    ...usual,
    ...over,
    parts: {
      ...usual.parts,
      ...Object.fromEntries(Object.entries(parts).map(([id, word]) => [id, partOf(word)])),
    },
  }
}

export const needs = (...list: Need[]): Pick<BuildChoice, 'asked' | 'needs' | 'agreed'> => ({
  asked: 'needs',
  needs: list,
  agreed: true,
})

export const send = (...builds: BuildChoice[]): Given => ({ type: 'send', builds, readBack: true })

/** A change that was read back. */
export const change = (name: string, to: BuildChoice): Given => ({
  type: 'change',
  ...at(name),
  to,
  readBack: true,
})

/** "1A" as the fields of a command. */
export const at = (name: string): { ticket: number; letter: string } => ({
  ticket: Number.parseInt(name, 10),
  letter: name.slice(-1),
})

export const refusalOf = (decision: Decision): Refusal | null =>
  'refusal' in decision ? decision.refusal : null

export const codeOf = (decision: Decision): ToldCode | null => {
  const refusal = refusalOf(decision)
  return refusal && toldCode(refusal)
}

export const eventsOf = (decision: Decision): readonly ServiceEvent[] =>
  'events' in decision ? decision.events : []

export const running = ({ state }: Told): RunningState => {
  if (!isRunning(state)) throw new Error('the service was never opened')
  return state
}

export const buildIn = ({ state }: Told, name: string): Build => {
  const build = findBuild(state, at(name).ticket, at(name).letter)
  if (!build) throw new Error(`there is no ${name}`)
  return build
}

export const inPan = ({ state }: Told, pan: string): number => state.pans[pan]?.amount ?? Number.NaN

export const accountOf = ({ state }: Told, component: string) => {
  const account = state.accounts[component]
  if (!account) throw new Error(`there is no account of ${component}`)
  return account
}
