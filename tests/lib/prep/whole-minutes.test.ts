import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { SANITIZE_MINUTES } from '#lib/prep/place-food.ts'
import { tasksOf } from '#lib/prep/tasks-of.ts'
import { MINUTE, rosters } from '#tests/support/prep-plans.ts'

describe('a making', () => {
  test('[PP1] [PP7] has all its minutes and hands for each of them, and raw food’s table is washed beside them', () => {
    let raw = 0
    fc.assert(
      fc.property(rosters, (given) => {
        const { tasks, unready } = tasksOf(given)
        const lacking = new Set(unready.map((one) => one.task))
        for (const food of given.foods) {
          const made = tasks.find(
            ({ component, kind }) =>
              component === food.component && (kind === 'make' || kind === 'cook'),
          )
          if (!made) throw new Error(`nobody makes ${food.component}`)
          expect(made.to - made.from, made.id).toBe(food.minutes * MINUTE)
          if (lacking.has(made.id)) continue
          const hands = [...made.who].sort((one, other) => one.from - other.from)
          let until = made.from
          for (const hand of hands) {
            expect(hand.from).toBeLessThanOrEqual(until)
            until = Math.max(until, hand.to)
          }
          expect(until).toBe(made.to)
          if (!food.raw) continue
          raw += 1
          const wash = tasks.find(({ id }) => id === `sanitize.${food.component}`)
          expect(wash).toMatchObject({
            ...{ from: made.to, to: made.to + SANITIZE_MINUTES * MINUTE, after: [made.id] },
          })
        }
      }),
      { numRuns: 120, seed: 7 },
    )
    expect(raw).toBeGreaterThan(20)
  })
})
