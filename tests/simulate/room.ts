/** One service in the real domain code, with a virtual clock. */

import { timeOnDayOf } from '#lib/measure/civil.ts'
import type { ServiceEvent } from '#lib/service/events/event.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import { isRunning, NOT_OPENED, type RunningState, type ServiceState } from '#lib/service/state.ts'
import { decide } from '#lib/spine/decide.ts'
import { evolve } from '#lib/spine/evolve.ts'
import type { Command } from '#lib/spine/registry.ts'
import { demoStation } from '#server/demo-station.ts'
import { opensIn, stationIn, type World } from '#tests/simulate/scenario.ts'
import { due } from '#tests/support/due.ts'

/** Midnight at the station of a day of no meaning. */
const MIDNIGHT = timeOnDayOf(Date.UTC(2026, 2, 2, 12), '00:00', demoStation.timeZone)

export interface Room {
  readonly state: () => RunningState
  /** Gives a command at a minute of the day; the refusal, or null where it was accepted. */
  readonly give: (minute: number, command: Command) => Refusal | null
  /** Gives a command that must be accepted. @throws where it is refused: a fault. */
  readonly must: (minute: number, command: Command) => void
  /** Appends what falls out of the state by itself, as the server's forecasts do. */
  readonly note: (
    minute: number,
    make: (state: RunningState) => readonly ServiceEvent[],
  ) => readonly ServiceEvent[]
  /** Appends what fell due by a minute of the day. */
  readonly tick: (minute: number) => void
  /** Epoch milliseconds of a minute of the day, as commands are given at it. */
  readonly instant: (minute: number) => number
  /** How long the log is. */
  readonly position: () => number
  readonly commands: () => number
  /** All that happened. */
  readonly events: () => readonly ServiceEvent[]
}

/** @throws where an event can't be folded: a fault of the domain. */
export const openRoom = (
  world: World,
  guestsExpected: number,
  onEvent: (event: ServiceEvent, minute: number) => void,
): Room => {
  let state: ServiceState = NOT_OPENED
  let commands = 0
  const events: ServiceEvent[] = []
  const instant = (minute: number): number =>
    Math.max(state.at, MIDNIGHT + Math.round(minute * 60_000))
  const running = (): RunningState => {
    if (!isRunning(state)) throw new Error('the service is not open')
    return state
  }
  const append = (happened: readonly ServiceEvent[], minute: number, command: string | null) => {
    const at = instant(minute)
    for (const event of happened) {
      events.push(event)
      state = evolve(state, { ...event, position: events.length, at, command })
      onEvent(event, minute)
    }
  }
  const give = (minute: number, command: Command): Refusal | null => {
    commands += 1
    const decision = decide(state, command, {
      now: instant(minute),
      by: 'lead',
      service: 's-simulated',
      station: () => ({ revision: 1, document: stationIn(world) }),
      otherIsOpen: false,
      newestLabels: {},
    })
    if ('refusal' in decision) return decision.refusal
    append(decision.events, minute, `c-${commands}`)
    return null
  }
  give(opensIn(world), { type: 'open', station: demoStation.id, kind: 'real', guestsExpected })
  return {
    state: running,
    give,
    must: (minute, command) => {
      const refusal = give(minute, command)
      if (refusal) throw new Error(`${command.type} refused: ${JSON.stringify(refusal)}`)
    },
    note: (minute, make) => {
      const made = make(running())
      append(made, minute, null)
      return made
    },
    tick: (minute) => {
      append(
        due(state, instant(minute)).map(({ event }) => event),
        minute,
        null,
      )
    },
    instant,
    position: () => events.length,
    commands: () => commands,
    events: () => events,
  }
}
