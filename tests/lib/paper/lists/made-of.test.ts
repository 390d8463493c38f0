import { expect, test } from 'vitest'
import { cardsOf, madeOf } from '#lib/paper/lists/made-of.ts'
import { compared, type Rational, ratio } from '#lib/recipes/rational.ts'
import { loadSize } from '#lib/rooms/prep/facts/load-size.ts'
import { componentOf } from '#lib/station/find.ts'
import { CARDED } from '#tests/support/carded-station.ts'

/** Tuna is made again in loads of 16 here too. */
const STATION = {
  ...CARDED,
  components: CARDED.components.map((one) =>
    one.id === 'tuna'
      ? {
          ...one,
          remake: {
            ...{ where: 'prep kitchen', by: 'prep', minutes: 20, minutesPerLoad: 10 },
            ...{ portionsPerLoad: 16, mostLoads: 2 },
          },
        }
      : one,
  ),
}

const made = (component: string, loads: number, measured: number | null) => {
  const yields = measured ? { [component]: { batches: 3, ratio: measured, range: null } } : {}
  const size = loadSize(STATION, componentOf(STATION, component), yields)
  const found = madeOf(cardsOf(STATION, yields), { component, loads, portions: loads * size })
  if (!found?.factor) throw new Error(component)
  return { ...found, factor: found.factor }
}
const same = (one: Rational, other: Rational) => compared(one, other) === 0

test('[PA14] a load that gives less than is stated takes all that a load takes, and one that gives more no more', () => {
  for (const [component, by] of [
    ['chicken', 'pan'],
    ['tuna', 'card'],
  ] as const)
    for (const measured of [0.5, 0.88, 1.25]) {
      const stated = made(component, 5, null)
      const corrected = made(component, 5, measured)
      expect(corrected.by).toBe(by)
      expect(corrected.portions).not.toBe(stated.portions)
      expect(same(corrected.factor, stated.factor), `${component} ${measured}`).toBe(true)
      // What goes into a pot is what is cooked, whatever comes out of it.
      expect(corrected.split.batches?.count).toBe(stated.split.batches?.count)
    }
})

test('[PA14] portions that were chosen before a batch was measured are made of as much as they take now', () => {
  const cards = cardsOf(STATION, { tuna: { batches: 1, ratio: 0.5, range: null } })
  const size = loadSize(STATION, componentOf(STATION, 'tuna'))
  const now = madeOf(cards, { component: 'tuna', loads: 1, portions: size })?.factor
  expect(now && same(now, made('tuna', 2, null).factor)).toBe(true)
})

test('[PA14] a pan without loads of its own has its card made more often too', () => {
  const alone = {
    ...STATION,
    components: STATION.components.map((one) =>
      one.id === 'tuna' ? { ...one, remake: null } : one,
    ),
  }
  const factor = (measured: number, portions: number) =>
    madeOf(cardsOf(alone, { tuna: { batches: 1, ratio: measured, range: null } }), {
      ...{ component: 'tuna', loads: 1, portions },
    })?.factor ?? ratio(1)
  expect(same(factor(0.8, 16), factor(1, 20))).toBe(true)
})
