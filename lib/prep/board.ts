/** Who is there and free, the table, and where a task fits: backwards, minute by minute. */
import type { Hand, Here, PrepPlan, Task, UnreadyWhy } from '#lib/prep/prep-plan.ts'
import { MINUTE_MS } from '#lib/safety/limits.ts'

/** What holds the one table, milliseconds. */
export interface OnTable {
  readonly raw: boolean
  readonly from: number
  readonly to: number
}

/** What is placed so far. It changes as tasks are placed, within one `tasksOf` alone. */
export interface Board {
  readonly plan: PrepPlan
  readonly tasks: Task[]
  readonly table: OnTable[]
}

/** Both ends count: who leaves at three can still read at three. */
const isThere = ({ from, to }: Here, at: number): boolean => from <= at && at <= to

export const someoneAt = (crew: readonly Here[], at: number): boolean =>
  crew.some((one) => isThere(one, at))

export const adultAt = (crew: readonly Here[], at: number): boolean =>
  crew.some((one) => one.adult && isThere(one, at))

/** Until when somebody of these is there from a moment on without a gap; the moment itself: nobody is. */
const thereUntil = (crew: readonly Here[], from: number): number => {
  let at = from
  for (;;) {
    const next = Math.max(at, ...crew.filter((one) => one.from <= at).map(({ to }) => to))
    if (next === at) return at
    at = next
  }
}

const isCovered = (crew: readonly Here[], from: number, to: number): boolean =>
  thereUntil(crew, from) >= to

/** When somebody's hands are full, by who. */
export const busyOf = (tasks: readonly Task[], who: string): readonly Hand[] =>
  tasks.flatMap((task) => task.who.filter((hand) => hand.who === who))

const freeUntil = (here: Here, busy: readonly Hand[], at: number): number => {
  if (at < here.from || at >= here.to) return at
  let until = here.to
  for (const { from, to } of busy) {
    if (from <= at && at < to) return at
    if (from > at && from < until) until = from
  }
  return until
}

/** Hands for all of it, passed on as seldom as can be; null where there are none. */
const handsFor = (board: Board, from: number, to: number): readonly Hand[] | null => {
  const { crew } = board.plan
  const busy = new Map(crew.map(({ who }) => [who, busyOf(board.tasks, who)]))
  const hands: Hand[] = []
  let at = from
  while (at < to) {
    let best: { readonly who: string; readonly until: number } | null = null
    // Students first: adults watch, and lend a hand where nobody else can.
    for (const here of [...crew].sort((a, b) => Number(a.adult) - Number(b.adult))) {
      const until = Math.min(to, freeUntil(here, busy.get(here.who) ?? [], at))
      if (until > at && (best === null || until > best.until)) best = { who: here.who, until }
    }
    if (best === null) return null
    hands.push({ who: best.who, from: at, to: best.until })
    at = best.until
  }
  return hands
}

/** How much of the table something needs: raw food, ready-to-eat food, or none of it. */
export type Surface = 'raw' | 'ready' | 'none'

const isTableFree = ({ plan, table }: Board, needs: Surface, from: number, to: number): boolean =>
  plan.ownTable ||
  needs === 'none' ||
  !table.some((one) => one.raw !== (needs === 'raw') && one.from < to && from < one.to)

export interface Wanted {
  readonly minutes: number
  readonly earliest: number
  /** When it has to be over at the latest. */
  readonly latest: number
  readonly surface: Surface
}

export type Placed =
  | { readonly ok: true; readonly from: number; readonly to: number; readonly who: readonly Hand[] }
  | { readonly ok: false; readonly from: number; readonly to: number; readonly why: UnreadyWhy }

/** Every start that is worth a look, the latest first. */
const starts = function* ({ minutes, earliest, latest }: Wanted): Generator<number> {
  for (let from = latest - minutes * MINUTE_MS; from >= earliest; from -= MINUTE_MS) yield from
}

/** Whether somebody could do it then, and the hands; null where nobody can. */
export const handsAt = (
  board: Board,
  from: number,
  to: number,
  surface: Surface,
): readonly Hand[] | null => {
  const { crew } = board.plan
  const adults = crew.filter(({ adult }) => adult)
  if (!isCovered(adults, from, to) || !isTableFree(board, surface, from, to)) return null
  return handsFor(board, from, to)
}

/** The latest place for a task, with hands and a certified adult there; else why there is none. */
export const placeLatest = (board: Board, wanted: Wanted): Placed => {
  const { crew } = board.plan
  const adults = crew.filter(({ adult }) => adult)
  const length = wanted.minutes * MINUTE_MS
  let why: UnreadyWhy = wanted.latest - length < wanted.earliest ? 'too-late' : 'nobody-there'
  for (const from of starts(wanted)) {
    const who = handsAt(board, from, from + length, wanted.surface)
    if (who) return { ok: true, from, to: from + length, who }
    if (why === 'no-hands' || !isCovered(crew, from, from + length)) continue
    why = isCovered(adults, from, from + length) ? 'no-hands' : 'no-adult'
  }
  return { ok: false, from: wanted.latest - length, to: wanted.latest, why }
}
