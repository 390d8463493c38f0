/** When a batch that cools is read: counted from its last reading at 135 °F, both stages (3-501.14). */
import type { Here, PrepFood, PrepPlan, UnreadyWhy } from '#lib/prep/prep-plan.ts'
import { MINUTE_MS } from '#lib/safety/limits.ts'

export interface ReadingTime {
  readonly kind: 'read-first' | 'read-cold'
  /** When it is read; where nobody can, the last moment at which it could be. */
  readonly at: number
  /** null: somebody can. */
  readonly why: UnreadyWhy | null
  /** From when on it can be as cold as that, and until when it counts. */
  readonly window: { readonly from: number; readonly to: number }
}

/** The first moment of a window at which one of these is there; null where none is. */
const firstThere = (crew: readonly Here[], from: number, to: number): number | null => {
  const moments = crew
    .map((one) => ({ at: Math.max(from, one.from), until: Math.min(to, one.to) }))
    .filter(({ at, until }) => at <= until)
    .map(({ at }) => at)
  return moments.length === 0 ? null : Math.min(...moments)
}

/** Where somebody with a certified adult can read it first; else why nobody can. */
const readable = (
  crew: readonly Here[],
  kind: ReadingTime['kind'],
  from: number,
  to: number,
): ReadingTime => {
  const window = { from, to }
  if (from > to) return { kind, at: to, why: 'too-late', window }
  const adults = crew.filter(({ adult }) => adult)
  const at = firstThere(adults, from, to)
  if (at !== null) return { kind, at, why: null, window }
  const isSomeone = firstThere(crew, from, to) !== null
  return { kind, at: to, why: isSomeone ? 'no-adult' : 'nobody-there', window }
}

/**
 * The readings of a cooling that starts at a moment and has to be over by another. Where nobody
 * measured how fast it cools, somebody has to be there at the limit itself: unknown never counts. What
 * was measured to cool slower than its limit is too late.
 */
export const readingTimes = (
  { crew, cooling }: Pick<PrepPlan, 'crew' | 'cooling'>,
  { coolsIn }: Pick<PrepFood, 'coolsIn'>,
  from: 'cooked' | 'room',
  start: number,
  neededAt: number,
): readonly ReadingTime[] => {
  const within = from === 'room' ? cooling.fromRoom : cooling.total
  const fastest = coolsIn === null ? within : coolsIn.total * MINUTE_MS
  const cold = readable(crew, 'read-cold', start + fastest, Math.min(start + within, neededAt))
  if (from === 'room') return [cold]
  const soonest = coolsIn === null ? cooling.first : coolsIn.first * MINUTE_MS
  const first = readable(
    crew,
    'read-first',
    start + soonest,
    Math.min(start + cooling.first, neededAt),
  )
  return [first, cold]
}

/** The last moment in time at which a certified adult is there; null where none is. */
export const lastSeen = (crew: readonly Here[], after: number, by: number): number | null => {
  const moments = crew
    .filter(({ adult, from, to }) => adult && from <= by && to > after)
    .map(({ to }) => Math.min(to, by))
  return moments.length === 0 ? null : Math.max(...moments)
}

/** Who reads at a moment: a student where one is there, since an adult watches. null: nobody. */
export const readerAt = (crew: readonly Here[], at: number): string | null => {
  const there = crew.filter(({ from, to }) => from <= at && at <= to)
  return (there.find(({ adult }) => !adult) ?? there[0])?.who ?? null
}
