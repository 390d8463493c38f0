import { levelOf } from '#lib/rooms/pans/facts/levels.ts'
import { isRunning, type RunningState } from '#lib/service/state.ts'
import { buildName, openBuilds } from '#lib/service/tickets.ts'
import type { Command } from '#lib/spine/registry.ts'
import { pansOf } from '#lib/station/find.ts'
import type { CrewClient } from '#lib/sync/crew-client.ts'
import { whenView } from '#server/shell/crew-connection.ts'
import { changeOf } from '#tests/support/refill.ts'

/** Portions below which a pan is changed: more than can be ordered before the change is in. */
const LOW = 11

const NEXT = { waiting: 'start', making: 'finish', made: 'handOver' } as const

/** Portions of everything that must be left, and builds that may be open, for orders to go on. */
const ENOUGH = 9
const MOST_OPEN = 8

/** Settles when counters can go on ordering, or when the connection is gone. */
export const whenRoom = (client: CrewClient): Promise<void> =>
  whenView(
    client,
    ({ state, link }) =>
      link === 'lost' ||
      (isRunning(state) &&
        openBuilds(state).length < MOST_OPEN &&
        state.station.components.every(({ id }) => levelOf(state, id).portionsLeft >= ENOUGH)),
  )

/** What a crew would do next: every open build a step on, and every low pan changed. */
const stepsOf = (state: RunningState): readonly (readonly [string, Command])[] => {
  const builds = openBuilds(state).flatMap(({ ticket, build }): [string, Command][] => {
    if (build.state === 'handed-over' || build.state === 'cancelled') return []
    const type = NEXT[build.state]
    const at = { ticket: ticket.number, letter: build.letter }
    const command: Command = type === 'start' ? { type, ...at, read: true } : { type, ...at }
    return [[`${type}-${buildName(at.ticket, at.letter)}`, command]]
  })
  const pans = pansOf(state.station).flatMap((pan): [string, Command][] => {
    const portion = state.portions[pan.component]
    const held = state.pans[pan.id]
    if (!portion || !held || levelOf(state, pan.component).portionsLeft >= LOW) return []
    return changeOf(state.station, pan, String(held.load), state.at).map(
      (command): [string, Command] => [`${command.type}-${pan.id}-${held.load}`, command],
    )
  })
  return [...pans, ...builds]
}

/**
 * A crew without hands: starts, finishes and hands over whatever it sees on its copy of the
 * service, and changes pans before they run out. Gives each command once, under an id that says
 * what it is. Returns how to stop.
 */
export const workAs = (
  client: CrewClient,
  give: (id: string, command: Command) => void,
): (() => void) => {
  const given = new Set<string>()
  const work = (): void => {
    const { state } = client.view()
    if (!isRunning(state)) return
    for (const [id, command] of stepsOf(state)) {
      if (given.has(id)) continue
      given.add(id)
      give(id, command)
    }
  }
  work()
  return client.subscribe(work)
}
