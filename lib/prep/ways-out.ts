/** What can be done about a task that can't be done as it stands. */

import { timeOnDayOf } from '#lib/measure/civil.ts'
import { placeLatest, type Surface } from '#lib/prep/board.ts'
import { lastSeen, readingTimes } from '#lib/prep/cooling-times.ts'
import { type Finding, type Ground, isCooled } from '#lib/prep/place-food.ts'
import type { PrepFood, Task, WayOut } from '#lib/prep/prep-plan.ts'
import { MINUTE_MS } from '#lib/safety/limits.ts'

/** No kitchen is asked to cool a batch to 41 °F faster than this: common practice, no source. */
const LEAST_ICE_MINUTES = 60

/** Cold by the last moment at which it can be read, if all of its readings fall to somebody then. */
const iceWay = ({ plan }: Ground, food: PrepFood, finding: Finding): readonly WayOut[] => {
  const { reading } = finding
  if (!reading || !food.cooked) return []
  const { starts, neededAt } = reading
  const firstAt = lastSeen(plan.crew, starts, Math.min(neededAt, starts + plan.cooling.first))
  const readAt = lastSeen(plan.crew, starts, Math.min(neededAt, starts + plan.cooling.total))
  if (firstAt === null || readAt === null) return []
  const minutes = (readAt - starts) / MINUTE_MS
  if (minutes < LEAST_ICE_MINUTES) return []
  const coolsIn = { first: Math.min((firstAt - starts) / MINUTE_MS, minutes), total: minutes }
  const times = readingTimes(plan, { coolsIn }, 'cooked', starts, neededAt)
  return times.every(({ why }) => why === null) ? [{ way: 'ice', readAt, minutes }] : []
}

/** Hot food that was to be cooked ahead, cooked on the day and held hot: nothing cools then. */
const morningWay = (ground: Ground, food: PrepFood, load: Task): readonly WayOut[] => {
  if (food.held !== 'hot' || !isCooled(food)) return []
  const isOther = (task: Task) => task.component !== food.component
  const without = { ...ground, tasks: ground.tasks.filter(isOther) }
  const surface: Surface = food.raw ? 'raw' : 'ready'
  const placed = placeLatest(without, {
    minutes: Math.max(1, Math.ceil(food.minutes)),
    earliest: Math.max(ground.plan.from, timeOnDayOf(load.from, '00:00', ground.plan.timeZone)),
    latest: load.from,
    surface,
  })
  return placed.ok ? [{ way: 'cook-in-the-morning', from: placed.from, to: placed.to }] : []
}

const readerWay = ({ at, to, reading }: Finding): readonly WayOut[] => {
  const { from, to: until } = reading ? reading.window : { from: at, to }
  return from <= until ? [{ way: 'another-reader', from, to: until }] : []
}

/** Every way out that there is, each worked out for this roster; `none` alone where there is none. */
export const waysOutOf = (ground: Ground, finding: Finding, load: Task): readonly WayOut[] => {
  const { foods, items } = ground.plan
  const food = foods.find(({ component }) => component === finding.component)
  const isHands = finding.why !== 'too-late'
  const ways: readonly WayOut[] = [
    ...(isHands ? readerWay(finding) : []),
    ...(food ? iceWay(ground, food, finding) : []),
    ...(food ? morningWay(ground, food, load) : []),
    ...(food && food.needed.length < items.length
      ? [{ way: 'smaller-menu' as const, items: food.needed }]
      : []),
  ]
  return ways.length === 0 ? [{ way: 'none' }] : ways
}
