/** Something to do for every student in each period in which they are there. */
import { type Board, busyOf } from '#lib/prep/board.ts'
import type { Hand, Prepared, Task, TaskKind } from '#lib/prep/prep-plan.ts'
import { MINUTE_MS } from '#lib/safety/limits.ts'

/** Whoever is there for less isn't given a task of their own. */
const LEAST_MINUTES = 10
const SIDE_MINUTES = 10

type Stretch = Hand

const MAIN: ReadonlySet<TaskKind> = new Set(['make', 'cook'])
const HELPED: ReadonlySet<TaskKind> = new Set(['make', 'cook', 'reheat', 'load', 'serve'])

const overlap = (one: { from: number; to: number }, other: { from: number; to: number }) => ({
  from: Math.max(one.from, other.from),
  to: Math.min(one.to, other.to),
})

const minutesOf = ({ from, to }: { from: number; to: number }): number => (to - from) / MINUTE_MS

/** Each student's time, cut by the periods; in whole where the plan names none. */
const stretchesOf = ({ plan }: Board): readonly Stretch[] =>
  plan.crew
    .filter(({ adult }) => !adult)
    .flatMap(({ who, from, to }) => {
      const time = overlap({ from, to }, { from: plan.from, to: plan.doorsClose })
      const periods = plan.periods.map((period) => overlap(time, period))
      return (plan.periods.length === 0 ? [time] : periods).map((one) => ({ who, ...one }))
    })
    .filter((one) => minutesOf(one) >= LEAST_MINUTES)

const isWatched = (board: Board, from: number, to: number): boolean => {
  const adults = board.plan.crew.filter(({ adult }) => adult)
  let at = from
  for (;;) {
    const next = Math.max(at, ...adults.filter((one) => one.from <= at).map((one) => one.to))
    if (next >= to) return true
    if (next === at) return false
    at = next
  }
}

/** What is done besides: weighing out for a making, labels and tools for the line. */
const sideTask = (board: Board, { who, from, to }: Stretch, load: Task): Task | null => {
  const has = (id: string) => board.tasks.some((task) => task.id === id)
  // What is weighed out is eaten as it is, most of it: never on the table of raw food (3-302.11).
  const raws = board.plan.ownTable ? [] : board.table.filter(({ raw }) => raw)
  const room = (before: number, isOnTable: boolean): { from: number; to: number } | null => {
    const end = Math.min(to, before)
    const start = end - SIDE_MINUTES * MINUTE_MS
    const raw = isOnTable ? raws.find((one) => one.from < end && one.to > start) : undefined
    if (raw) return room(raw.from, isOnTable)
    return start >= from && isWatched(board, start, end) ? { from: start, to: end } : null
  }
  const side = (kind: TaskKind, id: string, component: string | null, before: number) => {
    const at = has(id) ? null : room(before, component !== null)
    return at && { id, kind, component, amount: null, who: [{ who, ...at }], ...at, after: [] }
  }
  const isRaw = new Set(board.plan.foods.filter(({ raw }) => raw).map((one) => one.component))
  for (const { kind, component, from: before } of board.tasks) {
    // Raw food is touched at its own table alone, and what touched it is sanitized after (3-302.11).
    if (!MAIN.has(kind) || component === null || isRaw.has(component)) continue
    const task = side('measure', `measure.${component}`, component, before)
    if (task) return task
  }
  return side('labels', 'labels', null, load.from) ?? side('tools', 'tools', null, load.from)
}

/** A second pair of hands, where the fewest are. */
const helped = (board: Board, stretch: Stretch): boolean => {
  const [best] = board.tasks
    .map((task, index) => ({ task, index, shared: overlap(task, stretch) }))
    .filter(
      ({ task, shared }) => HELPED.has(task.kind) && task.who.length > 0 && minutesOf(shared) > 0,
    )
    .filter(({ shared }) => isWatched(board, shared.from, shared.to))
    .sort(
      (a, b) => a.task.who.length - b.task.who.length || minutesOf(b.shared) - minutesOf(a.shared),
    )
  if (!best) return false
  const { task, index, shared } = best
  board.tasks[index] = { ...task, who: [...task.who, { who: stretch.who, ...shared }] }
  return true
}

/** Gives each who has nothing to do something, and says who still hasn't. */
export const fillHands = (board: Board, load: Task): Prepared['idle'] =>
  stretchesOf(board).filter((stretch) => {
    const isBusy = busyOf(board.tasks, stretch.who).some(
      ({ from, to }) => from < stretch.to && stretch.from < to,
    )
    if (isBusy) return false
    const task = sideTask(board, stretch, load)
    if (task) board.tasks.push(task)
    return task === null && !helped(board, stretch)
  })
