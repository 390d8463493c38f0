/** Builds that the pans can no longer fill, and what can be done for each. */

import { owedBehind } from '#lib/rooms/pans/facts/behind.ts'
import { levelsOf, sellable } from '#lib/rooms/pans/facts/levels.ts'
import { shortBuilds } from '#lib/rooms/pans/facts/short.ts'
import { readyBehind } from '#lib/rooms/pans/facts/supply.ts'
import type { BuildState, RunningState } from '#lib/service/state.ts'
import { buildName, openBuilds } from '#lib/service/tickets.ts'
import { findItem } from '#lib/station/find.ts'

export interface ShortWays {
  /** "21A" */
  readonly build: string
  readonly ticket: number
  readonly letter: string
  readonly state: BuildState
  /** What there isn't enough of. */
  readonly component: string
  /** Whether its item is sold without it. */
  readonly canLeaveOut: boolean
  /** Bases of its item that can be had instead. */
  readonly swaps: readonly string[]
  /** Loads under way that could fill it, by when; epoch milliseconds. Null: none. */
  readonly waitUntil: number | null
  /** Portions of it that stand ready, in back-up pans and finished batches. */
  readonly ready: number
  /** Whether its guest chose to wait. */
  readonly waits: boolean
}

/**
 * Newest first, since those are hit first. `nextAt` says when more of a component is expected, as
 * the newest forecast has it; null where nothing is.
 */
export const shortWays = (
  state: RunningState,
  nextAt: (component: string) => number | null,
): readonly ShortWays[] => {
  const short = shortBuilds(state)
  if (short.size === 0) return []
  const levels = levelsOf(state)
  return openBuilds(state)
    .toReversed()
    .flatMap(({ ticket, build }): ShortWays[] => {
      const name = buildName(ticket.number, build.letter)
      const component = short.get(name)
      if (component === undefined) return []
      const { choice } = build.stop?.to ?? build
      const item = findItem(state.station, choice.item)
      const isBase = choice.base === component
      const part = item?.parts.find((one) => one.component === component)
      const swaps = isBase
        ? (item?.base?.choices ?? []).filter(
            (one) => one !== component && sellable(state, levels, one, choice.item) > 0,
          )
        : []
      return [
        {
          build: name,
          ticket: ticket.number,
          letter: build.letter,
          state: build.state,
          component,
          canLeaveOut: !isBase && part?.required === false && item?.heart !== component,
          swaps,
          waitUntil: nextAt(component),
          ready: Math.floor(
            (readyBehind(state, component) - owedBehind(state, component)) /
              (state.portions[component]?.amount ?? 1),
          ),
          waits: state.waits[name]?.component === component,
        },
      ]
    })
}
