import { civilDate, instantOn } from '#lib/measure/civil.ts'
import type { PlanTasting, TastingRefusal } from '#lib/tasting/command.ts'

/** Both ends of a tasting, epoch milliseconds, or why it can't be at that time. */
export const tastingTimes = (
  { on, from, to }: Pick<PlanTasting, 'on' | 'from' | 'to'>,
  timeZone: string,
  now: number,
): { readonly startsAt: number; readonly endsAt: number } | TastingRefusal => {
  if (on < civilDate(now, timeZone)) return { code: 'in-the-past' }
  if (to <= from) return { code: 'over-midnight' }
  const [startsAt, endsAt] = [instantOn(on, from, timeZone), instantOn(on, to, timeZone)]
  if (startsAt === null || endsAt === null) return { code: 'no-such-time' }
  return endsAt <= now ? { code: 'in-the-past' } : { startsAt, endsAt }
}
