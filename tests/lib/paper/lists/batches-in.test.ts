import { expect, test } from 'vitest'
import { cardsOf, madeOf } from '#lib/paper/lists/made-of.ts'
import { prepSheetEn } from '#lib/paper/words/prep-sheet-en.ts'
import { compared, ratio, times } from '#lib/recipes/rational.ts'
import { stationSchema } from '#lib/station/schema.ts'
import { CARDED } from '#tests/support/carded-station.ts'

/** Tuna's card is made in a vessel that holds so much; and at most so many loads of 16 at once. */
const stationWith = (holds: string | null, mostLoads: number | null) =>
  stationSchema.parse({
    ...CARDED,
    ...(holds === null ? {} : { vessels: [{ id: 'pot-1', name: 'Mixer bowl', holds }] }),
    recipes: CARDED.recipes.map((one) =>
      one.id === 'tuna-mix' && holds !== null ? { ...one, vessel: 'pot-1' } : one,
    ),
    components: CARDED.components.map((one) =>
      one.id === 'tuna'
        ? {
            ...one,
            remake:
              mostLoads === null
                ? null
                : {
                    ...{ where: 'prep kitchen', by: 'prep', minutes: 20, minutesPerLoad: 10 },
                    ...{ portionsPerLoad: 16, mostLoads },
                  },
          }
        : one,
    ),
  })

const made = (holds: string | null, mostLoads: number | null, portions: number) => {
  const found = madeOf(cardsOf(stationWith(holds, mostLoads)), {
    ...{ component: 'tuna', loads: 1, portions },
  })
  if (found === null) throw new Error('tuna')
  return found
}

const said = (holds: string | null, mostLoads: number | null, portions: number) => {
  const one = made(holds, mostLoads, portions)
  return prepSheetEn.split(one.split, one.portions)
}

// A portion of tuna is 1/2 cup, so 8 of them are a quart.
test('[PA46] a card’s batches go into its pot: as few even ones as fit, with the pot and what each is', () => {
  expect(said('4 qt', null, 32)).toBe('At once in the mixer bowl (4 qt).')
  expect(said('4 qt', null, 48)).toBe('2 batches of 24 in the mixer bowl (4 qt): 3 qt each.')
  expect(said('1 qt', null, 20)).toBe('3 even batches in the mixer bowl (1 qt): 3 1/3 cups each.')
  expect(said(null, null, 48)).toBe('')
})

test('[PA46] whichever takes less at once, the pot or what is made at once at most', () => {
  // At most one load of 16; the pot takes 32.
  expect(said('4 qt', 1, 48)).toBe('3 batches of 16 in the mixer bowl (4 qt): 2 qt each.')
  expect(said('1 qt', 3, 48)).toBe('6 batches of 8 in the mixer bowl (1 qt): 1 qt each.')
})

test('[PA46] where weight and volume aren’t joined, or what it holds isn’t understood, it says that nobody knows', () => {
  for (const holds of ['12 pieces', 'a lot'])
    expect(said(holds, null, 48)).toBe(
      `Made in the mixer bowl (${holds}): whether it fits isn’t known, look first.`,
    )
})

test('[PA46] the batches together are all of it, and one fewer wouldn’t fit', () => {
  for (const portions of [1, 7, 16, 33, 160]) {
    const { split, total } = made('3 qt', null, portions)
    const { batches } = split
    if (batches === null) throw new Error(String(portions))
    const { count, each } = batches
    expect(compared(times(each.size, ratio(count)), total.size)).toBe(0)
    const fits = made('3 qt', null, 24).total.size
    expect(compared(each.size, fits)).toBeLessThanOrEqual(0)
    if (count > 1) expect(compared(times(fits, ratio(count - 1)), total.size)).toBe(-1)
  }
})
