/** Builds that hold, or could hold, food which is off sale or to be thrown out. */
import type { BuildHeld, BuildStopped } from '#lib/service/event.ts'
import { isHeldForPan } from '#lib/service/evolve-held.ts'
import type { ThrowOutPassed } from '#lib/service/food-event.ts'
import { componentIn, type StockKind, stockOf, throwOutKey } from '#lib/service/held-stock.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
import { tookFrom } from '#lib/service/taken-from.ts'
import { buildName, openBuilds, type QueuedBuild } from '#lib/service/tickets.ts'
import { wantedFrom } from '#lib/stock/behind.ts'

/** One place of food, and since when what it held isn't known to be good. */
export interface Suspect {
  readonly what: StockKind
  readonly id: string
  /** Epoch milliseconds of its last reading in limits; null: since it was loaded. */
  readonly lastGoodAt: number | null
}

/** Whether nothing else has stopped it: what else did has its food thrown out anyway. */
const isFree = (build: Build): boolean =>
  (build.stop === null && build.hold === null) || isHeldForPan(build)

/** What is in the making could have taken from any pan of its component, on the line or behind it. */
const couldTake = (state: RunningState, build: Build, { what, id }: Suspect): boolean => {
  const component = componentIn(state.station, id)
  const { line, behind } = wantedFrom(state, build.choice, build.takes)
  return component !== undefined && ((what === 'pan' ? line : behind)[component] ?? 0) > 0
}

const isHeldFor = ({ hold }: Build, id: string): boolean => hold?.pans?.includes(id) ?? false

/** Made builds on the shelf with food that was taken since it was last known to be good. */
const madeWith = (state: RunningState, suspect: Suspect): readonly QueuedBuild[] =>
  openBuilds(state).filter(
    ({ build }) =>
      build.state === 'made' &&
      isFree(build) &&
      (isHeldFor(build, suspect.id) ||
        (build.since > (suspect.lastGoodAt ?? Number.NEGATIVE_INFINITY) &&
          tookFrom(state, build, suspect.what, suspect.id))),
  )

/**
 * Holds of what is being made and could have taken from a pan that was read out of limits, and of
 * what stands made on the shelf and did, since it was last known to be good: until the person in
 * charge decides on the pan, though another one could fill them.
 */
export const panHolds = (state: RunningState, suspect: Suspect): readonly BuildHeld[] => {
  const making = openBuilds(state).filter(
    ({ build }) => build.state === 'making' && isFree(build) && couldTake(state, build, suspect),
  )
  return [...making, ...madeWith(state, suspect)].flatMap(({ ticket, build }): BuildHeld[] =>
    isHeldFor(build, suspect.id) ||
    state.toThrowOut[throwOutKey('build', buildName(ticket.number, build.letter))]
      ? []
      : [
          {
            type: 'buildHeld',
            ticket: ticket.number,
            letter: build.letter,
            reason: 'off-sale',
            pan: suspect.id,
          },
        ],
  )
}

/**
 * Stops of what is being made with food out of these pans: what is in it is thrown out, and it is
 * made again from what is left. One that is stopped for anything else stays so.
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
    (build.stop === null || isHeldForPan(build)) &&
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

/** Made builds that are thrown out with the food which they took: initialled, and made again. */
export const madeToThrowOut = (
  state: RunningState,
  suspect: Suspect,
  because: 'too-warm' | 'out-of-limits',
): readonly ThrowOutPassed[] =>
  madeWith(state, suspect).flatMap(({ ticket, build }): ThrowOutPassed[] => {
    const id = buildName(ticket.number, build.letter)
    return state.toThrowOut[throwOutKey('build', id)]
      ? []
      : [{ type: 'throwOutPassed', what: 'build', id, because }]
  })

/** What is being made, and what stands made, goes with a pan that is off sale and thrown out. */
export const goneWith = (
  state: RunningState,
  what: StockKind,
  id: string,
): readonly (BuildStopped | ThrowOutPassed)[] => {
  const lastGoodAt = stockOf(state, what, id)?.offSale?.lastGoodAt ?? null
  return [
    ...stopsFor(state, [id]),
    ...madeToThrowOut(state, { what, id, lastGoodAt }, 'out-of-limits'),
  ]
}
