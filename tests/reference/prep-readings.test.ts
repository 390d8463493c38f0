/**
 * The readings of a batch that cools, against a walk through every minute that knows the rules in its
 * own words: 3-501.14(A) for the two stages, 3-501.16 for what comes after; that a certified adult is
 * there is 2-101.11 with 2-102.12, from memory. It calls nothing of lib/prep.
 */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { PrepPlan, UnreadyWhy } from '#lib/prep/prep-plan.ts'
import { tasksOf } from '#lib/prep/tasks-of.ts'
import { MINUTE, rosters } from '#tests/support/prep-plans.ts'

const TWO_HOURS = 120
const SIX_HOURS = 360
/** As the program states it: the quarter of an hour in which the line is read and loaded. */
const LOADING = 15

interface Walk {
  /** Minutes from the plan's start. */
  readonly doors: number
  readonly closes: number
  /** At the stroke of a minute: whoever leaves then is still there. */
  readonly adultAtStroke: (minute: number) => boolean
  /** The first stroke from a minute on at which one is there. */
  readonly adultAfter: (minute: number) => number
  readonly anyAfter: (minute: number) => number
  /** All through the minute that begins then. */
  readonly adultThrough: (minute: number) => boolean
  readonly anyThrough: (minute: number) => boolean
}

const walkOf = (plan: PrepPlan): Walk => {
  const length = (plan.doorsClose - plan.from) / MINUTE + 1
  const marks = (isAdult: boolean, isStroke: boolean): Uint8Array => {
    const there = new Uint8Array(length)
    for (const one of plan.crew) {
      if (isAdult && !one.adult) continue
      const first = (one.from - plan.from) / MINUTE
      const last = (one.to - plan.from) / MINUTE - (isStroke ? 0 : 1)
      for (let minute = Math.max(0, first); minute <= last && minute < length; minute += 1)
        there[minute] = 1
    }
    return there
  }
  /** Walked once, backwards: by minute, the next at which one is there. */
  const next = (there: Uint8Array): readonly number[] => {
    const after: number[] = new Array(length).fill(Number.POSITIVE_INFINITY)
    for (let minute = length - 1; minute >= 0; minute -= 1)
      after[minute] = there[minute] === 1 ? minute : (after[minute + 1] ?? Number.POSITIVE_INFINITY)
    return after
  }
  const [adultStroke, anyStroke] = [marks(true, true), marks(false, true)]
  const [adultMinute, anyMinute] = [marks(true, false), marks(false, false)]
  const [nextAdult, nextAny] = [next(adultStroke), next(anyStroke)]
  return {
    doors: (plan.doorsOpen - plan.from) / MINUTE,
    closes: (plan.doorsClose - plan.from) / MINUTE,
    adultAtStroke: (minute) => adultStroke[minute] === 1,
    adultAfter: (minute) => nextAdult[minute] ?? Number.POSITIVE_INFINITY,
    anyAfter: (minute) => nextAny[minute] ?? Number.POSITIVE_INFINITY,
    adultThrough: (minute) => adultMinute[minute] === 1,
    anyThrough: (minute) => anyMinute[minute] === 1,
  }
}

const all = (from: number, to: number, is: (minute: number) => boolean): boolean => {
  for (let minute = to - 1; minute >= from; minute -= 1) if (!is(minute)) return false
  return true
}

interface Lacking {
  readonly at: number
  readonly why: UnreadyWhy
}

/** A reading may be taken from the moment at which it can be that cold until its limit, or until the food is needed. */
const lackOf = (walk: Walk, from: number, to: number): Lacking | null => {
  if (from > to) return { at: to, why: 'too-late' }
  if (walk.adultAfter(from) <= to) return null
  const seen = walk.anyAfter(from) <= to
  return { at: to, why: seen ? 'no-adult' : 'nobody-there' }
}

const beansOf = (plan: PrepPlan) => {
  const beans = plan.foods.find(({ component }) => component === 'beans')
  if (!beans) throw new Error('no beans')
  return beans
}

/** When the beans have to be cold: the line is loaded, or they are heated again before, as late as can be. */
const coldBy = (plan: PrepPlan, walk: Walk): number => {
  const loading = walk.doors - LOADING
  const { ahead, minutes } = beansOf(plan)
  if (!ahead) return loading
  for (let from = loading - minutes; from >= 0; from -= 1)
    if (all(from, from + minutes, walk.adultThrough)) return from
  return loading - minutes
}

const lacksAt = (plan: PrepPlan, walk: Walk, cooked: number): readonly Lacking[] => {
  const { coolsIn } = beansOf(plan)
  const by = coldBy(plan, walk)
  const first = lackOf(
    walk,
    cooked + (coolsIn ? coolsIn.first : TWO_HOURS),
    Math.min(by, cooked + TWO_HOURS),
  )
  const cold = lackOf(
    walk,
    cooked + (coolsIn ? coolsIn.total : SIX_HOURS),
    Math.min(by, cooked + SIX_HOURS),
  )
  return [first, cold].flatMap((one) => (one ? [one] : []))
}

/** The fewest readings that nobody could take, over every minute at which the cooking could end; null: it can't. */
const fewest = (plan: PrepPlan, walk: Walk): number | null => {
  const { minutes } = beansOf(plan)
  let inTime: number | null = null
  let late: number | null = null
  for (let cooked = coldBy(plan, walk); cooked >= minutes; cooked -= 1) {
    if (!all(cooked - minutes, cooked, walk.adultThrough)) continue
    const lacks = lacksAt(plan, walk, cooked)
    if (lacks.some(({ why }) => why === 'too-late')) late = Math.min(late ?? 9, lacks.length)
    else inTime = Math.min(inTime ?? 9, lacks.length)
    if (inTime === 0) return 0
  }
  return inTime ?? late
}

const byTime = (one: Lacking, other: Lacking): number => one.at - other.at

describe('every unreadable time is found', () => {
  const seen = { ready: 0, unreadable: 0, uncooked: 0, nobody: 0, noAdult: 0, late: 0 }

  test('[PP5] with 6 components, 3 periods and one cooling batch, over 600 rosters', () => {
    fc.assert(
      fc.property(rosters, (plan) => {
        const walk = walkOf(plan)
        const { tasks, unready } = tasksOf(plan)
        const cook = tasks.find(({ id }) => id === 'cook.beans')
        const minuteOf = (moment: number) => (moment - plan.from) / MINUTE
        const told = unready
          .filter(({ task }) => task === 'read-first.beans' || task === 'read-cold.beans')
          .map(({ at, why }) => ({ at: minuteOf(at), why }))
          .sort(byTime)
        const cooked = minuteOf(cook?.to ?? Number.NaN)
        const least = fewest(plan, walk)
        const isCookable = !unready.some(({ task }) => task === 'cook.beans')
        expect(isCookable).toBe(least !== null)
        expect(told).toEqual(least === null ? [] : [...lacksAt(plan, walk, cooked)].sort(byTime))
        expect(told).toHaveLength(least ?? 0)
        if (least === null) seen.uncooked += 1
        else seen[least === 0 ? 'ready' : 'unreadable'] += 1
        if (told.some(({ why }) => why === 'nobody-there')) seen.nobody += 1
        if (told.some(({ why }) => why === 'no-adult')) seen.noAdult += 1
        if (told.some(({ why }) => why === 'too-late')) seen.late += 1
      }),
      { numRuns: 600, seed: 15 },
    )
    // Where one of them never came, the walk would have compared nothing.
    expect(Math.min(...Object.values(seen))).toBeGreaterThan(9)
  }, 120_000)

  test('[PP3] every minute at which somebody is there without an adult, over the same rosters', () => {
    fc.assert(
      fc.property(rosters, (plan) => {
        const walk = walkOf(plan)
        const told = new Set<number>()
        const { unready } = tasksOf(plan)
        for (const { task, at, to } of unready)
          if (task === null)
            for (let moment = at; moment < to; moment += MINUTE)
              told.add((moment - plan.from) / MINUTE)
        const walked: number[] = []
        for (let minute = 0; minute < walk.closes; minute += 1)
          if (walk.anyThrough(minute) && !walk.adultThrough(minute)) walked.push(minute)
        expect([...told].sort((a, b) => a - b)).toEqual(walked)
      }),
      { numRuns: 300, seed: 16 },
    )
  })

  test('[PP3] no task is given hands at a minute without a certified adult, nor to whoever isn’t there', () => {
    fc.assert(
      fc.property(rosters, (plan) => {
        const walk = walkOf(plan)
        const { tasks } = tasksOf(plan)
        for (const { who } of tasks)
          for (const hand of who) {
            const [from, to] = [hand.from, hand.to].map((one) => (one - plan.from) / MINUTE)
            if (from === undefined || to === undefined) throw new Error('no hand')
            expect(all(from, to, walk.adultThrough)).toBe(true)
            if (from === to) expect(walk.adultAtStroke(from)).toBe(true)
            expect(
              plan.crew.some(
                (one) => one.who === hand.who && one.from <= hand.from && hand.to <= one.to,
              ),
            ).toBe(true)
          }
      }),
      { numRuns: 300, seed: 17 },
    )
  })
})
