/** The tasks of a planned service, backwards from when its doors open, and what makes it not ready. */
import { adultAt, handsAt, placeLatest, someoneAt } from '#lib/prep/board.ts'
import { fillHands } from '#lib/prep/enough-for-all.ts'
import { type Finding, type Ground, isCooled, putFood } from '#lib/prep/place-food.ts'
import type { Prepared, PrepFood, PrepPlan, Task, TaskKind } from '#lib/prep/prep-plan.ts'
import { waysOutOf } from '#lib/prep/ways-out.ts'
import { MINUTE_MS } from '#lib/safety/limits.ts'

/** To read and load the line: common practice, no source. */
export const LOAD_MINUTES = 15

/** A task at a moment that nobody chooses. */
const putFixed = (ground: Ground, kind: TaskKind, from: number, to: number): Task => {
  const who = handsAt(ground, from, to, 'none')
  const after = kind === 'serve' ? ['load'] : []
  const base = { id: kind, kind, component: null, amount: null, from, to, after }
  const task: Task = { ...base, who: who ?? [] }
  ground.tasks.push(task)
  if (who === null) {
    const minutes = (to - from) / MINUTE_MS
    const placed = placeLatest(ground, { minutes, earliest: from, latest: to, surface: 'none' })
    const why = from < ground.plan.from ? 'too-late' : placed.ok ? 'no-hands' : placed.why
    ground.findings.push({ task: task.id, component: null, at: from, to, why })
  }
  return task
}

/** What cools can be put at the fewest moments, and raw food comes last: so they choose first. */
const inOrder = (foods: readonly PrepFood[]): readonly PrepFood[] => {
  const rank = (food: PrepFood): number => {
    if (isCooled(food)) return 0
    return food.raw ? 1 : 2
  }
  return [...foods].sort((a, b) => rank(a) - rank(b) || b.minutes - a.minutes)
}

/** Stretches in which students are there and no certified adult is (2-101.11, 2-102.12, from memory). */
const withoutAdult = ({ plan }: Ground): readonly Finding[] => {
  const { crew, from, doorsClose } = plan
  const marks = [...new Set(crew.flatMap((one) => [one.from, one.to]))]
    .filter((at) => at >= from && at < doorsClose)
    .sort((a, b) => a - b)
  const stretches: Finding[] = []
  for (const [index, start] of [from, ...marks].entries()) {
    const end = Math.min(doorsClose, marks[index] ?? doorsClose)
    const middle = (start + end) / 2
    if (end <= start || !someoneAt(crew, middle) || adultAt(crew, middle)) continue
    const last = stretches.at(-1)
    if (last?.to === start) stretches[stretches.length - 1] = { ...last, to: end }
    else stretches.push({ task: null, component: null, at: start, to: end, why: 'no-adult' })
  }
  return stretches
}

/**
 * What has to be done, how much of it, by whom and when: each task as late as it can be, so that
 * food is fresh, yet over before what comes after it. Nobody works where no certified adult is.
 *
 * @param plan moments are epoch milliseconds on whole minutes
 */
export const tasksOf = (plan: PrepPlan): Prepared => {
  const ground: Ground = { plan, tasks: [], table: [], findings: [] }
  const loadAt = plan.doorsOpen - LOAD_MINUTES * MINUTE_MS
  const load = putFixed(ground, 'load', loadAt, plan.doorsOpen)
  putFixed(ground, 'serve', plan.doorsOpen, plan.doorsClose)
  const last = inOrder(plan.foods).map((food) => putFood(ground, food, loadAt).id)
  const index = ground.tasks.findIndex(({ id }) => id === load.id)
  ground.tasks[index] = { ...load, after: last }
  const idle = fillHands(ground, load)
  const findings = [...ground.findings, ...withoutAdult(ground)].sort((a, b) => a.at - b.at)
  return {
    tasks: [...ground.tasks].sort((a, b) => a.from - b.from || (a.id < b.id ? -1 : 1)),
    unready: findings.map((finding) => {
      const { task, component, at, to, why } = finding
      return { task, component, at, to, why, waysOut: waysOutOf(ground, finding, load) }
    }),
    idle,
  }
}
