/** Builds that hold, or could hold, food which is to be thrown out. */
import type { BuildStopped } from '#lib/service/event.ts'
import { componentIn } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'
import { openBuilds } from '#lib/service/tickets.ts'

/**
 * Stops of what is being made with food out of these pans: what is in it is thrown out, and it is
 * made again from what is left. One that is stopped already stays so.
 */
export const stopsFor = (state: RunningState, pans: readonly string[]): readonly BuildStopped[] => {
  const components = new Set(
    pans.flatMap((id) => {
      const component = componentIn(state.station, id)
      return component === undefined ? [] : [component]
    }),
  )
  if (components.size === 0) return []
  return openBuilds(state).flatMap(({ ticket, build }): BuildStopped[] =>
    build.state === 'making' &&
    build.stop === null &&
    Object.entries(build.takes).some(([id, amount]) => amount > 0 && components.has(id))
      ? [
          {
            type: 'buildStopped',
            ticket: ticket.number,
            letter: build.letter,
            reason: 'throw-out',
            to: null,
          },
        ]
      : [],
  )
}
