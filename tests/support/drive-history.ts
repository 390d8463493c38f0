/**
 * Drives one service as the rail does: what fell due before each command, a jump of the clock as the
 * rail notes it, and starting again from the log. Nothing else of the tests of histories knows how.
 */

import type { Consequence } from '#lib/service/consequence.ts'
import type { Recorded, ServiceEvent } from '#lib/service/events/event.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { Role } from '#lib/service/roles.ts'
import { isUnderWay, NOT_OPENED, type ServiceState } from '#lib/service/state.ts'
import { stateHash } from '#lib/service/state-hash.ts'
import { fallDue, nextDue } from '#lib/spine/due.ts'
import { evolve } from '#lib/spine/evolve.ts'
import { happen, type Led } from '#lib/spine/happen.ts'
import { type Command, commandSchema } from '#lib/spine/registry.ts'
import { take } from '#lib/spine/take.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { JUMP_MS } from '#server/rail/clock.ts'
import { NO_WALL, wallAfter } from '#server/rail/wall-floor.ts'
import { newerLabels } from '#tests/support/newer-labels.ts'
import { type Given, OPENED_AT } from '#tests/support/service.ts'

/** One thing that happened, with all that followed from it. */
export interface Stepped {
  readonly before: ServiceState
  readonly after: ServiceState
  readonly recorded: readonly Recorded[]
  /** Whether a document is newer than the one that the service works with. */
  readonly isStale: boolean
}

export interface Taken extends Stepped {
  readonly refusal: Refusal | null
}

export interface Drive {
  readonly state: () => ServiceState
  readonly log: () => readonly Recorded[]
  /** The state that the log folds to from its start, written and read. */
  readonly folded: () => ServiceState
  readonly take: (command: Given, by: Role) => Taken
  /** Time passes, in milliseconds; each thing that falls due happens when it does. */
  readonly pass: (ms: number) => readonly Stepped[]
  /** The clock jumps while the server runs. */
  readonly jump: (byMs: number) => readonly Stepped[]
  /**
   * The server is off for so long, and its clock is set by so much meanwhile: where it shows less than
   * the log tells that is noted as a jump, else all that fell due happens at once. @throws where the log doesn't fold to the state that was lived
   */
  readonly restart: (awayMs: number, byMs: number) => readonly Stepped[]
  /** Somebody stores a newer document of the station. */
  readonly newDocument: () => void
  /** What the server itself has to say. */
  readonly note: (...events: readonly ServiceEvent[]) => Stepped
}

/** Drives a service that isn't opened yet. `follows`: the rules' own consequences where left away. */
export const createDrive = (station: StationDocument, follows?: readonly Consequence[]): Drive => {
  const log: Recorded[] = []
  let state: ServiceState = NOT_OPENED
  let wall = OPENED_AT
  let newer = 0

  const now = (): number => Math.max(wall, state.at)
  const known = () => ({
    newestLabels: newer > 0 ? newerLabels(state) : {},
    ...(follows ? { follows } : {}),
  })
  const stepped = ({ state: after, recorded }: Led): Stepped => {
    const before = state
    log.push(...recorded)
    state = after
    return { before, after, recorded, isStale: newer > 0 }
  }
  const falls = (): readonly Stepped[] => {
    const one = stepped(fallDue(state, now(), log.length, known()))
    return one.recorded.length === 0 ? [] : [one]
  }
  const jumped = (byMs: number): readonly Stepped[] => {
    const noted = isUnderWay(state) ? [note({ type: 'clockJumped', byMs })] : []
    return [...noted, ...falls()]
  }
  const note = (...events: readonly ServiceEvent[]): Stepped =>
    stepped(
      happen(state, events, { position: log.length, command: null }, { ...known(), now: now() }),
    )

  const folded = (): ServiceState =>
    (JSON.parse(JSON.stringify(log)) as Recorded[]).reduce(evolve, NOT_OPENED)

  return {
    state: () => state,
    folded,
    log: () => log,
    note,
    newDocument: () => {
      newer += 1
    },
    take: (given, by) => {
      const command: Command = commandSchema.parse(given)
      const { refusal, ...led } = take(
        state,
        { id: `c-${log.length + 1}`, command, position: log.length },
        {
          ...known(),
          now: now(),
          by,
          service: 's-lunch',
          otherIsOpen: false,
          station: (id) => (id === station.id ? { revision: 1, document: station } : null),
        },
      )
      return { ...stepped(led), refusal }
    },
    pass: (ms) => {
      const until = wall + ms
      const happened: Stepped[] = []
      for (let at = nextDue(state); at !== null && at <= until; at = nextDue(state)) {
        wall = Math.max(wall, at)
        const fallen = falls()
        if (fallen.length === 0) break
        happened.push(...fallen)
      }
      wall = until
      return [...happened, ...falls()]
    },
    jump: (byMs) => {
      wall += byMs
      return jumped(byMs)
    },
    restart: (awayMs, byMs) => {
      wall += awayMs + byMs
      const before = stateHash(state)
      state = folded()
      if (stateHash(state) !== before) throw new Error('the log folds to another state')
      const behind = log.reduce(wallAfter, NO_WALL).wall - wall
      return behind >= JUMP_MS ? jumped(-behind) : falls()
    },
  }
}
