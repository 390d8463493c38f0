import type { ThrowOutPassed } from '#lib/service/events/food-event.ts'
import type { Build } from '#lib/service/state.ts'

/** A made build that is to be thrown out. What it was stopped to become it still is to become. */
export const buildPassed = (
  { stop }: Build,
  id: string,
  because: ThrowOutPassed['because'],
): ThrowOutPassed => ({
  type: 'throwOutPassed',
  what: 'build',
  id,
  because,
  ...(stop?.to ? { keepsChange: true } : {}),
})
