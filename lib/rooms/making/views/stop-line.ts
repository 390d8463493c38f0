/** The line as a build that may not go on sees it: what changes in each pan, and what stays. */
import { needsOf } from '#lib/rooms/care/facts/held.ts'
import {
  isTakenFrom,
  type PanForBuild,
  panForBuild,
  type TakePan,
} from '#lib/rooms/making/views/assembly-pan.ts'
import {
  type BuildChoice,
  type Placement,
  portionsTaken,
} from '#lib/service/events/build-choice.ts'
import { boundAt } from '#lib/service/held-stock.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
import { pansOf } from '#lib/station/find.ts'
import type { Pan } from '#lib/station/station-document.ts'

export interface PartAs {
  readonly placement: Placement
  readonly portions: number
}

/** Why what came out of a pan may not go on. */
export type Marked = 'off-sale' | 'throw-out' | 'clock' | 'not-for-guest'

/** What a pan is to a build that may not go on as it was. */
export type StopPan =
  /** Old struck out, new in place; `take` where it is to be taken. */
  | {
      readonly kind: 'changed'
      readonly from: PartAs
      readonly to: PartAs
      readonly take: TakePan | null
    }
  /** It was to be in it, and nothing is made of it any more. */
  | { readonly kind: 'struck'; readonly from: PartAs }
  /** To keep away from, under a lid; `from` where it was to be in it. */
  | { readonly kind: 'shut'; readonly from: PartAs | null }
  /** It is why the build may not go on. */
  | { readonly kind: 'marked'; readonly from: PartAs; readonly why: Marked }
  | { readonly kind: 'same'; readonly part: PartAs }
  | { readonly kind: 'idle' }

const NOT_IN: PartAs = { placement: 'no', portions: 0 }

/** How a choice has a component: the base is with. */
export const partIn = (choice: BuildChoice, component: string): PartAs => {
  const portions = portionsTaken(choice, component)
  if (portions === 0) return NOT_IN
  return { placement: choice.parts[component]?.placement ?? 'in', portions }
}

const isIn = ({ placement }: PartAs): boolean => placement !== 'no'

const isAlike = (one: PartAs, other: PartAs): boolean =>
  one.placement === other.placement && one.portions === other.portions

/** Where nothing can be compared every pan stays shut. */
const seenAs = (state: RunningState, pan: Pan, choice: BuildChoice): PanForBuild => {
  try {
    return panForBuild(state, pan, choice, null)
  } catch {
    return { kind: 'away', hazards: [], leftOut: false }
  }
}

const staying = (part: PartAs): StopPan => (isIn(part) ? { kind: 'same', part } : { kind: 'idle' })

/** Held, and not changed yet: what its guest keeps away from, or may not be served, is why. */
const whileHeld = (
  { stands, hazards }: Pick<TakePan, 'stands' | 'hazards'>,
  from: PartAs,
  isApart: boolean,
): StopPan => {
  if (hazards.length > 0)
    return isApart ? { kind: 'shut', from } : { kind: 'marked', from, why: 'not-for-guest' }
  return stands === 'sold' ? { kind: 'same', part: from } : { kind: 'marked', from, why: stands }
}

/**
 * Every pan of the line, by its id.
 * @param to what it becomes; null where it is held, or to be thrown out, and nothing is chosen yet;
 * `cancelled` where nothing is made of it any more
 */
export const stopLine = (
  state: RunningState,
  build: Build,
  to: BuildChoice | null | 'cancelled',
): Readonly<Record<string, StopPan>> => {
  const needs = needsOf(build)
  const apart = new Set(needs.filter((one) => one.handling === 'keep-apart').map((one) => one.code))
  const next = to === null || to === 'cancelled' ? { ...build.choice, needs } : to
  const one = (pan: Pan): StopPan => {
    const isPlace = isTakenFrom(state, pan)
    const from = isPlace ? partIn(build.choice, pan.component) : NOT_IN
    if (to === 'cancelled') return isIn(from) ? { kind: 'struck', from } : { kind: 'idle' }
    const seen = seenAs(state, pan, next)
    if (seen.kind === 'away') return { kind: 'shut', from: isIn(from) ? from : null }
    if (to === null) {
      if (seen.kind !== 'take') return staying(from)
      const isOut = boundAt(state, 'pan', pan.id) !== undefined
      const isPan = build.hold?.pans?.includes(pan.id) ?? false
      const stands = isOut ? 'throw-out' : isPan ? 'off-sale' : seen.stands
      const isApart = seen.hazards.some(({ code }) => apart.has(code))
      return whileHeld({ ...seen, stands }, from, isApart)
    }
    const then = isPlace ? partIn(to, pan.component) : NOT_IN
    if (isAlike(from, then)) return staying(from)
    return { kind: 'changed', from, to: then, take: seen.kind === 'take' ? seen : null }
  }
  return Object.fromEntries(pansOf(state.station).map((pan) => [pan.id, one(pan)]))
}
