/** Who of a plan is there about now, by initials: whom a task may be said of by one tap. */
import { civilDate, instantOn } from '#lib/measure/civil.ts'
import { MINUTE_MS } from '#lib/safety/limits.ts'
import type { ServicePlan } from '#lib/service/events/plan-event.ts'

/** Who comes early, or ticks after the bell: common practice, no source. */
const AROUND_MS = 15 * MINUTE_MS

/**
 * In the order of the alphabet, each once: those who are there now; else those of the day; else all.
 * @param told initials by the id of each entry of the crew; whose are gone isn't among them
 * @param now epoch milliseconds
 */
export const whoIsThere = (
  { crew }: Pick<ServicePlan, 'crew'>,
  told: Readonly<Record<string, string>>,
  now: number,
  timeZone: string,
): readonly string[] => {
  const today = civilDate(now, timeZone)
  const isHere = ({ on, from, to }: ServicePlan['crew'][number]): boolean => {
    const [comes, goes] = [instantOn(on, from, timeZone), instantOn(on, to, timeZone)]
    return comes !== null && goes !== null && comes - AROUND_MS <= now && now <= goes + AROUND_MS
  }
  const known = crew.filter(({ id }) => told[id] !== undefined)
  const here = known.filter(isHere)
  const ofDay = known.filter(({ on }) => on === today)
  const those = here.length > 0 ? here : ofDay.length > 0 ? ofDay : known
  return [...new Set(those.flatMap(({ id }) => told[id] ?? []))].sort()
}
