/** What stands in the way of a build, by the pans from which it is, or was, taken. */
import { type Checker, judgeTaken, strictest, type TakenFrom } from '#lib/needs/judge.ts'
import { kitchenMet, kitchenOf } from '#lib/rooms/care/facts/kitchen-of.ts'
import { findingsOf, type InTheWay, inTheWay, type Taken } from '#lib/rooms/care/facts/standing.ts'
import { withdraw } from '#lib/rooms/pans/facts/short.ts'
import { type BuildChoice, takenComponents } from '#lib/service/events/build-choice.ts'
import type { Taking } from '#lib/service/events/taking.ts'
import { componentIn } from '#lib/service/held-stock.ts'
import type { Build, RunningState } from '#lib/service/state.ts'

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

/**
 * Components that are taken out of protected back-up pans as the kitchen stands; nothing is known where
 * that can't be said, and nothing has to be where the guest has no needs.
 */
export const behindAsJudged = (
  state: RunningState,
  { needs, ...choice }: BuildChoice,
  checker: Checker = judgeTaken,
): readonly string[] | undefined => {
  if (needs.length === 0) return undefined
  const taken = takenComponents({ needs, ...choice })
  try {
    const { fromBackup } = checker(kitchenOf(state), taken, strictest(needs))
    return taken.filter((one) => fromBackup.includes(one))
  } catch {
    return undefined
  }
}

const isOut = ({ state }: Build): boolean => state === 'made' || state === 'handed-over'

/** Out of which pans each component came when a build was started; null where nobody noted it. */
const begunFrom = ({ choice, behind }: Build): TakenFrom | null =>
  behind === undefined
    ? null
    : Object.fromEntries(
        takenComponents(choice).map((one) => [one, behind.includes(one) ? 'backup' : 'line']),
      )

/**
 * The ways in which a build's food may be taken, or was. Made food came out of the pans that it was
 * counted off, and what was put into it by then out of those from which it was begun; what is told of
 * those pans later may have been so then. What is in the making is both: begun, and still to be taken,
 * so that it is held as soon as it couldn't be finished.
 */
const waysOf = (state: RunningState, build: Build): readonly Taken[] => {
  const asNow: Taken = { kitchen: kitchenOf(state) }
  if (build.stop?.to || !(isOut(build) || build.state === 'making')) return [asNow]
  const kitchen = kitchenMet(state, isOut(build) ? build : { begunIn: build.begunIn ?? 0 })
  const tookNow = () => withdraw(state, build.takes, build.choice, build.behind).took
  const begun = begunFrom(build)
  const asBegun = begun ? [{ kitchen, from: begun }] : []
  return isOut(build)
    ? [{ kitchen, from: takenFrom(state, build.choice, build.took) }, ...asBegun]
    : [asNow, { kitchen }, ...asBegun, { kitchen, from: takenFrom(state, build.choice, tookNow()) }]
}

const standingIn = (
  state: RunningState,
  choice: BuildChoice,
  name: string,
  ways: readonly Taken[],
  checker: Checker | undefined,
): readonly InTheWay[] | null => {
  const found: InTheWay[] = []
  for (const way of ways) {
    const findings = findingsOf(state, choice, checker, way)
    if (findings === null) return null
    found.push(...inTheWay(state, choice, findings, name))
  }
  return found
}

/** What a build goes on as. */
export const goesOnAs = ({ choice, stop }: Build): BuildChoice => stop?.to?.choice ?? choice

/**
 * What stands in the way of a build as it goes on: what isn't made by the pans that it would be taken
 * from now, what is made by those that it was taken from, what is in the making by both. null where
 * that can't be said.
 */
export const standingOf = (
  state: RunningState,
  build: Build,
  name: string,
  checker?: Checker,
): readonly InTheWay[] | null => {
  const choice = goesOnAs(build)
  return choice.needs.length === 0
    ? []
    : standingIn(state, choice, name, waysOf(state, build), checker)
}

/**
 * What stands in the way of a build in the making that doesn't say what it was begun from, as older logs
 * don't: by the pans that it was taken from until something happened.
 */
export const standingAsBefore = (
  before: RunningState,
  after: RunningState,
  build: Build,
  name: string,
  checker?: Checker,
): readonly InTheWay[] | null => {
  const { choice, state, stop } = build
  if (state !== 'making' || build.behind || stop?.to || choice.needs.length === 0) return []
  const behind = behindAsJudged(before, choice, checker)
  const from = begunFrom({ ...build, ...(behind ? { behind } : {}) })
  return from && standingIn(after, choice, name, [{ kitchen: kitchenOf(after), from }], checker)
}

/** What stands in its way when it is finished out of these pans. */
export const standingIfTaken = (
  state: RunningState,
  build: Build,
  name: string,
  took: readonly Taking[],
  checker?: Checker,
): readonly InTheWay[] | null => {
  if (build.choice.needs.length === 0) return []
  const finished: Build = { ...build, state: 'made', took }
  return standingIn(state, build.choice, name, waysOf(state, finished), checker)
}
