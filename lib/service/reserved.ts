/** What builds keep others from selling. */
import type { Amounts } from '#lib/service/events/build-choice.ts'
import type { Build } from '#lib/service/state.ts'

/** What a build's new choice takes beyond its old one: held while a stop isn't acknowledged. */
export const beyond = (before: Amounts, after: Amounts): Amounts =>
  Object.fromEntries(
    Object.entries(after)
      .map(([component, amount]) => [component, amount - (before[component] ?? 0)] as const)
      .filter(([, amount]) => amount > 0),
  )

const isOwed = ({ state }: Build): boolean => state === 'waiting' || state === 'making'

/** What a build that isn't made yet keeps beyond its own, for what it is stopped to become. */
export const keptByStop = (build: Build): Amounts =>
  build.stop?.to && isOwed(build) ? beyond(build.takes, build.stop.to.takes) : {}

/** What a build keeps in all: nothing once its own is out of the pans. */
export const keptBy = (build: Build): Amounts => {
  if (!isOwed(build)) return {}
  const kept: Record<string, number> = { ...build.takes }
  for (const [component, amount] of Object.entries(keptByStop(build)))
    kept[component] = (kept[component] ?? 0) + amount
  return kept
}
