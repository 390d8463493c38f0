import fc from 'fast-check'
import type { Here, Period, PrepFood, PrepPlan } from '#lib/prep/prep-plan.ts'

export const MINUTE = 60_000

/** Friday, 4 December 2026, 00:00 in New York; the day before begins 24 hours earlier. */
export const FRIDAY = Date.UTC(2026, 11, 4, 5)

/** A moment of the service's day, or of another as so many days from it. */
export const at = (time: string, days = 0): number => {
  const [hours = 0, minutes = 0] = time.split(':').map(Number)
  return FRIDAY + (days * 1_440 + hours * 60 + minutes) * MINUTE
}

export const food = (component: string, said: Partial<PrepFood> = {}): PrepFood => ({
  component,
  ...{ loads: 1, portions: 24, minutes: 20, cooked: false, held: 'cold', raw: false },
  ...{ ahead: false, fromRoom: false, frozen: false, coolsIn: null, needed: ['bowl'] },
  ...said,
})

export const PERIODS: readonly Period[] = [
  { name: 'Period 2', from: at('08:40'), to: at('09:30') },
  { name: 'Period 3', from: at('09:34'), to: at('10:24') },
  { name: 'Period 4', from: at('10:28'), to: at('11:18') },
]

export const student = (who: string, from: string, to: string, days = 0): Here => ({
  ...{ who, adult: false, from: at(from, days), to: at(to, days) },
})

export const adult = (who: string, from: string, to: string, days = 0): Here => ({
  ...{ who, adult: true, from: at(from, days), to: at(to, days) },
})

export const plan = (said: Partial<PrepPlan> = {}): PrepPlan => ({
  timeZone: 'America/New_York',
  doorsOpen: at('11:20'),
  doorsClose: at('12:20'),
  from: at('08:00', -1),
  crew: [],
  periods: PERIODS,
  foods: [],
  items: ['bowl', 'wrap'],
  ownTable: false,
  cooling: { first: 120 * MINUTE, total: 360 * MINUTE, fromRoom: 240 * MINUTE },
  ...said,
})

/** Six components, of which one batch cools; how it is served, how fast it cools, and who is there differ. */
const SIX: readonly PrepFood[] = [
  food('rice', { cooked: true, held: 'hot', minutes: 25 }),
  food('chicken', { cooked: true, held: 'hot', raw: true, minutes: 35 }),
  food('slaw', { minutes: 20 }),
  food('almonds', { held: 'dry', minutes: 12 }),
  food('sauce', { minutes: 15 }),
]

/** To the minute, so that a roster's edges fall anywhere. */
const stay = (days: number, first: number, last: number) =>
  fc
    .tuple(fc.integer({ min: first, max: last }), fc.integer({ min: 20, max: 420 }))
    .map(([from, minutes]) => {
      const begins = FRIDAY + (days * 1_440 + from) * MINUTE
      return { from: begins, to: begins + minutes * MINUTE }
    })

const persons = (most: number) =>
  fc.array(
    fc.record({
      adult: fc.boolean(),
      stays: fc.tuple(
        fc.option(stay(-1, 420, 1_080)),
        fc.option(stay(0, 400, 620)),
        fc.option(stay(0, 600, 690)),
      ),
    }),
    { minLength: 1, maxLength: most },
  )

export const rosters = fc
  .record({
    people: persons(6),
    isAhead: fc.boolean(),
    minutes: fc.integer({ min: 10, max: 60 }),
    coolsIn: fc.option(
      fc
        // Both limits are missed by some: 120 and 360 minutes.
        .tuple(fc.integer({ min: 20, max: 150 }), fc.integer({ min: 20, max: 290 }))
        .map(([first, more]) => ({ first, total: first + more })),
    ),
    from: fc.constantFrom(at('07:30', -1), at('12:10', -1), at('07:00')),
    ownTable: fc.boolean(),
  })
  .map(({ people, isAhead, minutes, coolsIn, from, ownTable }) => {
    const beans = food('beans', { cooked: true, held: isAhead ? 'hot' : 'cold', minutes, coolsIn })
    const crew = people.flatMap(({ adult: isAdult, stays }, index) =>
      stays.flatMap((one) => (one ? [{ who: `c${index + 1}`, adult: isAdult, ...one }] : [])),
    )
    return plan({ crew, from, ownTable, foods: [...SIX, { ...beans, ahead: isAhead }] })
  })
