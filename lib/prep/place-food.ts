/** The tasks of one food, from the line backwards to where it comes from. */

import { timeOnDayOf } from '#lib/measure/civil.ts'
import {
  type Board,
  handsAt,
  type Placed,
  placeLatest,
  type Surface,
  type Wanted,
} from '#lib/prep/board.ts'
import { type ReadingTime, readerAt, readingTimes } from '#lib/prep/cooling-times.ts'
import type { Hand, PrepFood, Task, TaskKind, UnreadyWhy } from '#lib/prep/prep-plan.ts'
import { HOUR_MS, MINUTE_MS } from '#lib/safety/limits.ts'

/** Wash, rinse, sanitize a table and its boards: common practice, no source. */
export const SANITIZE_MINUTES = 10
/** To fetch cans or a frozen pack into the cooler: common practice, no source. */
const FETCH_MINUTES = 5
const MOST_REHEAT_MINUTES = (2 * HOUR_MS) / MINUTE_MS

/** A task that can't be done as it stands. Its cooling counts from `starts`; the food is wanted at `neededAt`. */
export interface Finding {
  readonly task: string | null
  readonly component: string | null
  readonly at: number
  readonly why: UnreadyWhy
  readonly to: number
  readonly reading?: ReadingTime & { readonly starts: number; readonly neededAt: number }
}

export interface Ground extends Board {
  readonly findings: Finding[]
}

/** Food that is cooked and cooled before it is served: cold food always, hot food where it is said. */
export const isCooled = ({ cooked, held, ahead }: PrepFood): boolean =>
  cooked && (held !== 'hot' || ahead)

/** Bread and nuts are eaten as they are too: what isn't raw is ready to eat, however it is held. */
const surfaceOf = ({ raw }: PrepFood): Surface => (raw ? 'raw' : 'ready')

const idOf = (kind: TaskKind, component: string): string => `${kind}.${component}`

const put = (
  ground: Ground,
  task: Task,
  why: UnreadyWhy | null,
  reading?: Finding['reading'],
): Task => {
  ground.tasks.push(task)
  const { id, component, from: at, to } = task
  if (why) ground.findings.push({ task: id, component, at, to, why, ...(reading && { reading }) })
  return task
}

/** Puts what was placed, or what couldn't be, where it should have been. */
const putPlaced = (
  ground: Ground,
  food: PrepFood,
  kind: TaskKind,
  placed: Placed,
  after: readonly string[],
): Task => {
  const { component, loads, portions } = food
  const { from, to } = placed
  const amount = { loads, portions }
  const task = { id: idOf(kind, component), kind, component, amount, from, to, after }
  return put(ground, { ...task, who: placed.ok ? placed.who : [] }, placed.ok ? null : placed.why)
}

const wanted = (ground: Ground, minutes: number, latest: number, surface: Surface): Wanted => ({
  minutes: Math.max(1, Math.ceil(minutes)),
  earliest: ground.plan.from,
  latest,
  surface,
})

/** Raw food has its table washed, rinsed and sanitized right after, by the same hands. */
const putMaking = (
  ground: Ground,
  food: PrepFood,
  placed: Placed,
  after: readonly string[],
): Task => {
  const wash = food.raw ? SANITIZE_MINUTES * MINUTE_MS : 0
  const { from, to } = placed
  const surface = surfaceOf(food)
  if (placed.ok && surface !== 'none') ground.table.push({ raw: food.raw, from, to })
  const until = to - wash
  const cut = (hands: readonly Hand[], start: number, end: number): readonly Hand[] =>
    hands.flatMap((hand) =>
      hand.from < end && hand.to > start
        ? [{ ...hand, from: Math.max(start, hand.from), to: Math.min(end, hand.to) }]
        : [],
    )
  const kind = food.cooked ? 'cook' : 'make'
  const own: Placed = placed.ok
    ? { ...placed, to: until, who: cut(placed.who, from, until) }
    : { ...placed, to: until }
  const task = putPlaced(ground, food, kind, own, after)
  if (wash > 0 && placed.ok)
    ground.tasks.push({
      ...{ id: idOf('sanitize', food.component), kind: 'sanitize', component: food.component },
      ...{ amount: null, from: until, to, after: [task.id] },
      who: cut(placed.who, until, to),
    })
  return task
}

interface Cooled {
  readonly placed: Placed
  readonly neededAt: number
  readonly times: readonly ReadingTime[]
}

const isBetter = (one: readonly ReadingTime[], other: readonly ReadingTime[]): boolean => {
  const late = (times: readonly ReadingTime[]) => times.some(({ why }) => why === 'too-late')
  const read = (times: readonly ReadingTime[]) => times.filter(({ why }) => why === null).length
  if (late(one) !== late(other)) return !late(one)
  // What can't be cold in time is begun as early as can be.
  return late(one) ? read(one) >= read(other) : read(one) > read(other)
}

/** The latest making whose readings can all be taken; else the one that lacks the fewest. */
const placeCooled = (
  ground: Ground,
  food: PrepFood,
  from: 'cooked' | 'room',
  neededAt: number,
): Cooled => {
  const { plan } = ground
  const wash = food.raw ? SANITIZE_MINUTES : 0
  const length = Math.max(1, Math.ceil(food.minutes) + wash) * MINUTE_MS
  const surface = surfaceOf(food)
  let best: Cooled | null = null
  for (let end = neededAt; end - length >= plan.from; end -= MINUTE_MS) {
    const times = readingTimes(plan, food, from, end - wash * MINUTE_MS, neededAt)
    if (best !== null && !isBetter(times, best.times)) continue
    const who = handsAt(ground, end - length, end, surface)
    if (!who) continue
    best = { placed: { ok: true, from: end - length, to: end, who }, neededAt, times }
    if (times.every(({ why }) => why === null)) break
  }
  if (best) return best
  const within = from === 'room' ? plan.cooling.fromRoom : plan.cooling.total
  const latest = neededAt - (food.coolsIn ? food.coolsIn.total * MINUTE_MS : within)
  // What can't be made isn't read: its making is what has to be settled.
  const placed = placeLatest(ground, wanted(ground, length / MINUTE_MS, latest, surface))
  return { placed, neededAt, times: [] }
}

const putCooled = (
  ground: Ground,
  food: PrepFood,
  cooled: Cooled,
  after: readonly string[],
): Task => {
  const { component } = food
  const { neededAt } = cooled
  let last = putMaking(ground, food, cooled.placed, after)
  const starts = last.to
  if (food.cooked && cooled.times.length > 0) {
    const reader = readerAt(ground.plan.crew, starts)
    const who = reader === null ? [] : [{ who: reader, from: starts, to: starts }]
    const id = idOf('cool', component)
    const at = { from: starts, to: starts }
    last = put(
      ground,
      { id, kind: 'cool', component, amount: null, who, ...at, after: [last.id] },
      null,
    )
  }
  for (const time of cooled.times) {
    const { kind, at, why } = time
    const reader = why === null ? readerAt(ground.plan.crew, at) : null
    const who = reader === null ? [] : [{ who: reader, from: at, to: at }]
    const task = { id: idOf(kind, component), kind, component, amount: null, who, from: at, to: at }
    last = put(ground, { ...task, after: [last.id] }, why, { ...time, starts, neededAt })
  }
  return last
}

/** What has to lie in the cooler since the day before the food is made. */
const placeFetch = (ground: Ground, before: number): Placed => {
  const day = timeOnDayOf(before, '00:00', ground.plan.timeZone)
  return placeLatest(ground, wanted(ground, FETCH_MINUTES, day, 'none'))
}

/** Of cans: chilled the day before, or else read at 41 °F within 4 hours. */
const putFromRoom = (
  ground: Ground,
  food: PrepFood,
  neededAt: number,
  after: readonly string[],
): Task => {
  const made = placeLatest(ground, wanted(ground, food.minutes, neededAt, surfaceOf(food)))
  const fetched = placeFetch(ground, made.from)
  if (fetched.ok) {
    const chill = putPlaced(ground, food, 'chill', fetched, [])
    return putMaking(ground, food, made, [...after, chill.id])
  }
  const cooled = placeCooled(ground, food, 'room', neededAt)
  return putCooled(ground, food, cooled, after)
}

/** All tasks of a food that has to be ready by a moment; what is done last of it is given back. */
export const putFood = (ground: Ground, food: PrepFood, readyBy: number): Task => {
  const thaw = food.frozen ? [idOf('thaw', food.component)] : []
  let done: Task
  if (isCooled(food)) {
    const isReheated = food.held === 'hot'
    const reheatMinutes = Math.min(MOST_REHEAT_MINUTES, food.minutes)
    const reheat = isReheated
      ? placeLatest(ground, wanted(ground, reheatMinutes, readyBy, 'none'))
      : null
    const cooled = placeCooled(ground, food, 'cooked', reheat?.from ?? readyBy)
    done = putCooled(ground, food, cooled, thaw)
    if (reheat) done = putPlaced(ground, food, 'reheat', reheat, [done.id])
  } else if (food.fromRoom && !food.cooked && food.held === 'cold') {
    done = putFromRoom(ground, food, readyBy, thaw)
  } else {
    const wash = food.raw ? SANITIZE_MINUTES : 0
    const placed = placeLatest(
      ground,
      wanted(ground, food.minutes + wash, readyBy, surfaceOf(food)),
    )
    done = putMaking(ground, food, placed, thaw)
  }
  if (food.frozen) {
    const making = ground.tasks.find(
      ({ component, kind }) => component === food.component && (kind === 'cook' || kind === 'make'),
    )
    putPlaced(ground, food, 'thaw', placeFetch(ground, making?.from ?? readyBy), [])
  }
  return done
}
