/** What stands in protected back-up pans, and which builds take from them. */

import { judgeComponent } from '#lib/needs/judge.ts'
import { kitchenOf } from '#lib/rooms/care/facts/kitchen-of.ts'
import {
  type Amounts,
  type BuildChoice,
  isKeptApart,
  takenComponents,
} from '#lib/service/events/build-choice.ts'
import { usableIn } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'
import { openBuilds } from '#lib/service/tickets.ts'

/** Back-up pans of a component that hold food which may be sold, protected ones only where asked. */
export const backupsOf = (
  state: RunningState,
  component: string,
  only: 'guarded' | 'all' = 'guarded',
): readonly string[] =>
  Object.entries(state.backupPans)
    .filter(
      ([id, one]) =>
        one.component === component &&
        (only === 'all' || one.guarded) &&
        usableIn(state, 'backup', id) > 0,
    )
    .map(([id]) => id)

/** What may be taken out of them, in the component's unit. */
export const behindOf = (
  state: RunningState,
  component: string,
  only: 'guarded' | 'all' = 'guarded',
): number =>
  backupsOf(state, component, only).reduce((sum, id) => sum + usableIn(state, 'backup', id), 0)

/**
 * Components that a build takes from their protected back-up pans. One that was said to be ready
 * without a word of what it holds isn't counted: its portions come off the line's.
 */
export const takenBehind = (state: RunningState, choice: BuildChoice): readonly string[] => {
  if (!isKeptApart(choice)) return []
  const counted = takenComponents(choice).filter((id) => behindOf(state, id) > 0)
  if (counted.length === 0) return []
  try {
    const kitchen = kitchenOf(state)
    return counted.filter((id) => judgeComponent(kitchen, id, choice.needs).fromBackup)
  } catch {
    // Needs that can't be checked are told where they are; no back-up pan clears them.
    return []
  }
}

export const sumOf = (one: Amounts, other: Amounts): Amounts => {
  const sum: Record<string, number> = { ...one }
  for (const [id, amount] of Object.entries(other)) sum[id] = (sum[id] ?? 0) + amount
  return sum
}

export interface Wanted {
  readonly line: Amounts
  readonly behind: Amounts
}

/** What a build takes from the line and what from back-up pans. */
export const wantedFrom = (state: RunningState, choice: BuildChoice, takes: Amounts): Wanted => {
  const apart = takenBehind(state, choice)
  if (apart.length === 0) return { line: takes, behind: {} }
  const of = (isApart: boolean): Amounts =>
    Object.fromEntries(Object.entries(takes).filter(([id]) => apart.includes(id) === isApart))
  return { line: of(false), behind: of(true) }
}

/** What accepted builds that aren't made yet take from back-up pans, by component. */
const allOwed = (state: RunningState): Readonly<Record<string, number>> => {
  const owed: Record<string, number> = {}
  if (Object.values(state.backupPans).every((one) => one.amount <= 0)) return owed
  for (const { build } of openBuilds(state)) {
    if (build.state === 'made') continue
    for (const id of takenBehind(state, build.choice))
      owed[id] = (owed[id] ?? 0) + (build.takes[id] ?? 0)
  }
  return owed
}

/** Of a state, which never changes: worked out once. */
const owedIn = new WeakMap<RunningState, Readonly<Record<string, number>>>()

/** What accepted builds that aren't made yet take from a component's back-up pans. */
export const owedBehind = (state: RunningState, component: string): number => {
  const known = owedIn.get(state) ?? allOwed(state)
  owedIn.set(state, known)
  return known[component] ?? 0
}
