/** Readings, batches and times of food, told in commands at minutes after the opening. */
import type { Circumstances, Decision } from '#lib/service/commands/decision.ts'
import type { Recorded, ServiceEvent } from '#lib/service/events/event.ts'
import { decide } from '#lib/spine/decide.ts'
import { evolve } from '#lib/spine/evolve.ts'
import { due } from '#tests/support/due.ts'
import {
  circumstances,
  deepFreeze,
  type Given,
  OPENED_AT,
  parsed,
  type Told,
} from '#tests/support/service.ts'

export const MINUTE = 60_000

/** So many minutes after the opening, epoch milliseconds. */
export const minute = (count: number): number => OPENED_AT + count * MINUTE

/** A reading in °F, in the middle of the food. */
export const fahrenheit = (
  degrees: number,
  over: {
    readonly at?: number
    readonly scaleConfirmed?: boolean
    readonly cleaned?: boolean
  } = {},
) =>
  ({
    tenths: degrees * 10,
    scale: 'F',
    probe: 'probe 1',
    where: 'middle-stirred',
    ...over,
  }) as const

/** A reading and who took it. */
export const read = (degrees: number, over: Parameters<typeof fahrenheit>[1] = {}) => ({
  reading: fahrenheit(degrees, over),
  initials: 'KT',
})

/** A batch that was cooked, and cooled in time, in the hours before the opening. */
export const cooledBefore = (batch: string, component: string): readonly Given[] => {
  const cooling = (degrees: number, at: number): Given => ({
    type: 'recordCooling',
    batch,
    ...read(degrees, { at: minute(at) }),
    presentUntil: minute(60),
  })
  return [
    { type: 'startBatch', batch, component, loads: 1, startedAt: minute(-420) },
    {
      type: 'recordCooking',
      batch,
      reading: { ...fahrenheit(168, { at: minute(-390) }), heldSeconds: 20 },
      initials: 'KT',
    },
    { type: 'finishBatch', batch, amount: 1_000_000, finishedAt: minute(-385) },
    cooling(140, -380),
    cooling(68, -280),
    cooling(40, -100),
  ]
}

/** A batch that isn't cooked, made in the hour before the opening. */
export const madeBefore = (
  batch: string,
  component: string,
  amount = 1_000_000,
): readonly Given[] => [
  { type: 'startBatch', batch, component, loads: 1, startedAt: minute(-60) },
  { type: 'finishBatch', batch, amount, finishedAt: minute(-30) },
]

const folded = (
  told: Told,
  at: number,
  events: readonly ServiceEvent[],
  stamp: Pick<Recorded, 'command' | 'due'>,
): Told => {
  const recorded = events.map(
    (event, index): Recorded => ({
      ...event,
      ...stamp,
      position: told.events.length + index + 1,
      at,
    }),
  )
  return {
    state: recorded.reduce((state, event) => evolve(deepFreeze(state), event), told.state),
    events: [...told.events, ...recorded],
  }
}

/** What had fallen due by a minute has happened, as the rail would have it. */
export const until = (told: Told, minutes: number): Told => {
  const now = Math.max(told.state.at, minute(minutes))
  return due(told.state, now).reduce(
    (so, one) => folded(so, now, [one.event], { command: null, due: one.due }),
    told,
  )
}

/** What a command does at a minute, after what fell due before it. */
export const whenAt = (
  told: Told,
  minutes: number,
  command: Given,
  over: Partial<Circumstances> = {},
): Decision => {
  const before = until(told, minutes)
  const now = Math.max(before.state.at, minute(minutes))
  const known = { now, newestLabels: {}, ...over }
  return decide(deepFreeze(before.state), parsed(command), circumstances(known))
}

/** Commands that must be accepted, all of them at a minute. */
export const at = (told: Told, minutes: number, ...commands: Given[]): Told =>
  commands.reduce((so, command) => {
    const decision = whenAt(so, minutes, command, { by: 'in-charge' })
    if ('refusal' in decision)
      throw new Error(`${command.type} was refused: ${JSON.stringify(decision.refusal)}`)
    const before = until(so, minutes)
    const now = Math.max(before.state.at, minute(minutes))
    return folded(before, now, decision.events, { command: `c-${before.events.length + 1}` })
  }, told)

/** Every hot or cold pan read in its limits. */
export const readAll = ({ state }: Told): readonly Given[] =>
  Object.entries(state.pans).flatMap(([id, { food, amount }]): Given[] =>
    amount > 0 && (food?.heldBy === 'hot' || food?.heldBy === 'cold')
      ? [{ type: 'readTemperature', what: 'pan', id, ...read(food.heldBy === 'hot' ? 150 : 38) }]
      : [],
  )
