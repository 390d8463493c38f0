/** What stands in the way of a build, by the pans from which it is, or was, taken. */
import { type Checker, judgeTaken, strictest, type TakenFrom } from '#lib/needs/judge.ts'
import { kitchenAt, kitchenOf } from '#lib/needs/kitchen.ts'
import { type BuildChoice, takenComponents } from '#lib/service/build-choice.ts'
import { componentIn } from '#lib/service/held-stock.ts'
import { findingsOf, type InTheWay, inTheWay, type Taken } from '#lib/service/standing.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
import type { Taking } from '#lib/service/taking.ts'

/** A back-up pan was said to stand ready without a word of what it holds: older logs did. */
const isOnlySaid = (state: RunningState, component: string): boolean =>
  state.backups[component] !== undefined &&
  Object.values(state.backupPans).every((one) => one.component !== component || one.load === 0)

/** Out of which of its pans each component came. What was taken beyond the counts came with the rest. */
export const takenFrom = (
  state: RunningState,
  choice: BuildChoice,
  took: readonly Taking[],
): TakenFrom =>
  Object.fromEntries(
    takenComponents(choice).map((component) => {
      const own = took.filter(({ pan }) => componentIn(state.station, pan) === component)
      const isBehind = own.length > 0 && own.every(({ pan }) => state.backupPans[pan] !== undefined)
      return [component, isBehind || isOnlySaid(state, component) ? 'backup' : 'line'] as const
    }),
  )

/** Out of which pans it is taken as the kitchen stands; null where that can't be said. */
const fromAsJudged = (
  state: RunningState,
  choice: BuildChoice,
  checker: Checker,
): TakenFrom | null => {
  const taken = takenComponents(choice)
  try {
    const { fromBackup } = checker(kitchenOf(state), taken, strictest(choice.needs))
    return Object.fromEntries(
      taken.map((one) => [one, fromBackup.includes(one) ? 'backup' : 'line'] as const),
    )
  } catch {
    return null
  }
}

const isOut = ({ state }: Build): boolean => state === 'made' || state === 'handed-over'

/** Made food came out of the pans as they were, and what is told of them later may have been so then. */
const takenOf = (state: RunningState, build: Build): Taken => {
  if (!isOut(build) || build.stop?.to) return { kitchen: kitchenOf(state) }
  return {
    kitchen: kitchenAt(state, build.madeAt ?? build.since),
    from: takenFrom(state, build.choice, build.took),
  }
}

/** What a build goes on as. */
export const goesOnAs = ({ choice, stop }: Build): BuildChoice => stop?.to?.choice ?? choice

/**
 * What stands in the way of a build as it goes on: what isn't made by the pans that it would be taken
 * from now, what is made by those that it was taken from. null where that can't be said.
 */
export const standingOf = (
  state: RunningState,
  build: Build,
  name: string,
  checker?: Checker,
): readonly InTheWay[] | null => {
  const choice = goesOnAs(build)
  if (choice.needs.length === 0) return []
  const findings = findingsOf(state, choice, checker, takenOf(state, build))
  return findings && inTheWay(state, choice, findings, name)
}

/**
 * What stands in the way of a build in the making by the pans that it was taken from until now: what
 * reaches those now may be in it, though the rest would come from others.
 */
export const standingAsBegun = (
  before: RunningState,
  after: RunningState,
  { choice }: Build,
  name: string,
  checker: Checker = judgeTaken,
): readonly InTheWay[] | null => {
  const from = fromAsJudged(before, choice, checker)
  const findings = from && findingsOf(after, choice, checker, { kitchen: kitchenOf(after), from })
  return findings && inTheWay(after, choice, findings, name)
}

/** What stands in its way when it is finished out of these pans. */
export const standingIfTaken = (
  state: RunningState,
  { choice }: Build,
  name: string,
  took: readonly Taking[],
  checker?: Checker,
): readonly InTheWay[] | null => {
  if (choice.needs.length === 0) return []
  const out = { kitchen: kitchenOf(state), from: takenFrom(state, choice, took) }
  const findings = findingsOf(state, choice, checker, out)
  return findings && inTheWay(state, choice, findings, name)
}
