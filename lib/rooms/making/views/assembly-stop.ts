import { type WhyHeld, whyHeld } from '#lib/rooms/care/facts/held.ts'
import { foodInIt, type WholeBecause } from '#lib/rooms/making/facts/food-in-it.ts'
import { isTakenFrom } from '#lib/rooms/making/views/assembly-pan.ts'
import { elsewhere } from '#lib/rooms/making/views/at-screen.ts'
import { type PartAs, type StopPan, stopLine } from '#lib/rooms/making/views/stop-line.ts'
import type { BuildChoice } from '#lib/service/events/build-choice.ts'
import { isHeldForPan } from '#lib/service/folding/pan-hold.ts'
import { componentIn } from '#lib/service/held-stock.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
import { buildName, openBuilds } from '#lib/service/tickets.ts'
import type { Need } from '#lib/station/codes/codes.ts'
import { componentOf, pansOf } from '#lib/station/find.ts'

/** One thing that a changed build has otherwise than before. Ids, not words. */
export type Difference =
  | { readonly what: 'item'; readonly from: string; readonly to: string }
  | { readonly what: 'base'; readonly from: string | null; readonly to: string | null }
  | {
      readonly what: 'part'
      readonly component: string
      readonly from: PartAs
      readonly to: PartAs
    }
  | { readonly what: 'need'; readonly need: Need; readonly is: 'new' | 'gone' }

/** A pan that a stopped build is made of: its food was in it unless it is said that it wasn't. */
export interface PanInStop {
  readonly component: string
  /** It goes on the side, in a lidded cup that may be put back. */
  readonly isCup: boolean
  /** Its cup may not be put back: it is thrown out whatever else is. */
  readonly staysOut: boolean
}

export interface Stopped {
  readonly ticket: number
  readonly letter: string
  readonly name: string
  readonly at: number
  /** Id of what it was when it was stopped. */
  readonly item: string
  readonly state: 'waiting' | 'making' | 'made'
  /** Name of the other screen that is to answer it; null where that is this one. */
  readonly elsewhere: string | null
  /** Why it may not go on; null where it was only changed, or cancelled. */
  readonly held: WhyHeld | null
  /** Names of what it took that may not be eaten any more; null where that isn't why. */
  readonly throwOut: readonly string[] | null
  /** What it becomes differs so; null where it is cancelled, or held and not changed yet. */
  readonly differences: readonly Difference[] | null
  /** Of a waiting build nothing is in the making; of a made one all is out of the pans; else it is asked. */
  readonly inIt: 'nothing' | 'all' | 'asked'
  /** Every pan of the line, by its id: what changes there, and what stays. */
  readonly line: Readonly<Record<string, StopPan>>
  /** The pans that it takes from, by their ids; none where nothing is asked of them. */
  readonly pans: Readonly<Record<string, PanInStop>>
  /** Why all of it is thrown out, if anything is; null where what wasn't in it is back on sale. */
  readonly whole: WholeBecause | null
}

const needDifferences = (from: BuildChoice, to: BuildChoice): readonly Difference[] => {
  const isIn = (need: Need, choice: BuildChoice) =>
    choice.needs.some((one) => one.code === need.code && one.handling === need.handling)
  return [
    ...to.needs
      .filter((need) => !isIn(need, from))
      .map((need) => ({ what: 'need', need, is: 'new' }) as const),
    ...from.needs
      .filter((need) => !isIn(need, to))
      .map((need) => ({ what: 'need', need, is: 'gone' }) as const),
  ]
}

const NOT_IN: PartAs = { placement: 'no', portions: 0 }

/** The base is told by itself. */
const partOf = ({ parts }: BuildChoice, component: string): PartAs => parts[component] ?? NOT_IN

/** What differs between two choices: needs first, then item and base, then part by part. */
export const differencesOf = (from: BuildChoice, to: BuildChoice): readonly Difference[] => {
  const parts = [...new Set([...Object.keys(from.parts), ...Object.keys(to.parts)])]
  return [
    ...needDifferences(from, to),
    ...(from.item === to.item
      ? []
      : [{ what: 'item', from: from.item, to: to.item } satisfies Difference]),
    ...(from.base === to.base
      ? []
      : [{ what: 'base', from: from.base, to: to.base } satisfies Difference]),
    ...parts.flatMap((component): Difference[] => {
      const before = partOf(from, component)
      const after = partOf(to, component)
      return before.placement === after.placement && before.portions === after.portions
        ? []
        : [{ what: 'part', component, from: before, to: after }]
    }),
  ]
}

/** What is thrown out of what a build takes; all it takes where that is gone from the list already. */
const thrownOutOf = (state: RunningState, { takes }: Build): readonly string[] => {
  const taken = Object.keys(takes).filter((id) => (takes[id] ?? 0) > 0)
  const out = Object.values(state.toThrowOut).flatMap(({ what, id }) =>
    what === 'build' ? [] : [componentIn(state.station, id)],
  )
  const own = taken.filter((id) => out.includes(id))
  return own.map((id) => componentOf(state.station, id).name)
}

const pansInStop = (
  state: RunningState,
  { takes, choice, state: is }: Build,
  staysOut: readonly string[],
): Stopped['pans'] =>
  Object.fromEntries(
    pansOf(state.station)
      .filter(
        (pan) => is === 'making' && (takes[pan.component] ?? 0) > 0 && isTakenFrom(state, pan),
      )
      .map(({ id, component }): [string, PanInStop] => [
        id,
        {
          component,
          isCup: choice.parts[component]?.placement === 'side',
          staysOut: staysOut.includes(component),
        },
      ]),
  )

const IN_IT = { waiting: 'nothing', making: 'asked', made: 'all' } as const satisfies Readonly<
  Record<Stopped['state'], Stopped['inIt']>
>

/** The builds that were stopped and wait for an answer, in whatever state, oldest stop first. */
export const stoppedBuilds = (
  state: RunningState,
  here: string | null = null,
): readonly Stopped[] =>
  openBuilds(state)
    .flatMap(({ ticket, build }): Stopped[] => {
      const { stop, hold, choice } = build
      if (!stop || build.state === 'handed-over' || build.state === 'cancelled') return []
      // On the shelf it waits for the person in charge; Hand-over says so.
      if (build.state === 'made' && isHeldForPan(build)) return []
      const { whole, staysOut } = foodInIt(state, build)
      return [
        {
          ticket: ticket.number,
          letter: build.letter,
          name: buildName(ticket.number, build.letter),
          at: stop.at,
          item: choice.item,
          state: build.state,
          elsewhere: elsewhere(build, here),
          held:
            hold && stop.reason !== 'cancel' && stop.reason !== 'throw-out'
              ? whyHeld(state, build, hold)
              : null,
          throwOut: stop.reason === 'throw-out' ? thrownOutOf(state, build) : null,
          differences: stop.to ? differencesOf(choice, stop.to.choice) : null,
          inIt: IN_IT[build.state],
          line: stopLine(
            state,
            build,
            stop.to?.choice ?? (stop.reason === 'cancel' ? 'cancelled' : null),
          ),
          pans: pansInStop(state, build, staysOut),
          whole: build.state === 'waiting' ? null : whole,
        },
      ]
    })
    .sort((one, other) => one.at - other.at)
