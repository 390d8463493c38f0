/** What is said of a build's needs before it is sent: it is compared again when the order arrives. */
import { type Checker, type Finding, isFine, judgeTaken, strictest } from '#lib/needs/judge.ts'
import { kitchenOf } from '#lib/rooms/care/facts/kitchen-of.ts'
import { type BuildChoice, takenComponents } from '#lib/service/events/build-choice.ts'
import type { RunningState } from '#lib/service/state.ts'

/** A note is said of its need, a caution of what it comes through. */
const keyOf = ({ component, need, why, level, touches }: Finding): string =>
  isFine(level)
    ? `${why === 'not-listed' ? why : 'note'} ${need}`
    : ['caution', need, component, why, touches ?? ''].join(' ').trim()

/**
 * Notes, cautions and back-up pans of what a build takes, as keys in order, each once; none for a
 * guest without needs. null where the needs can't be checked.
 */
export const saidOf = (
  state: RunningState,
  choice: BuildChoice,
  checker: Checker = judgeTaken,
): readonly string[] | null => {
  if (choice.needs.length === 0) return []
  try {
    const { findings, fromBackup } = checker(
      kitchenOf(state),
      takenComponents(choice),
      strictest(choice.needs),
    )
    return [
      ...new Set([...findings.map(keyOf), ...fromBackup.map((one) => `back-up ${one}`)]),
    ].sort()
  } catch {
    return null
  }
}

/** Whether what was said still holds; `said` undefined: the sender doesn't tell. */
export const isAsSaid = (
  state: RunningState,
  choice: BuildChoice,
  said: readonly string[] | undefined,
  checker: Checker | undefined,
): boolean => {
  if (said === undefined) return true
  const now = saidOf(state, choice, checker)
  const then = new Set(said)
  return now !== null && now.length === then.size && now.every((one) => then.has(one))
}
