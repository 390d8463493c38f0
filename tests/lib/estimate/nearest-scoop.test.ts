import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  carriedBy,
  type Missing,
  nearestScoop,
  type ToolAtHand,
} from '#lib/estimate/nearest-scoop.ts'
import { densityGPerMl, portionMg } from '#lib/measure/portion.ts'
import { scoopVolumeMl } from '#lib/measure/scoops.ts'
import { everyNeed, saysOf } from '#lib/needs/says.ts'
import { ingredient, kitchen } from '#tests/support/kitchens.ts'

type Over = Partial<ReturnType<typeof ingredient>>

/** A kitchen whose leaf and heart are free of all that there is, with claims, but for what is said. */
const stationWith = (leaf: Over = {}, heart: Over = {}) => {
  const { station } = kitchen()
  const free = (id: string, { declarations = {}, ...over }: Over) =>
    ingredient(id, declarations, { claims: { halal: 'declared', kosher: 'declared' }, ...over })
  const own = [free('leaf', leaf), free('heart', heart)]
  return {
    ...station,
    ingredients: [
      ...station.ingredients.filter(({ id }) => own.every((one) => one.id !== id)),
      ...own,
    ],
  }
}
const ALL_FREE = stationWith()
const carriedToHeart = (leaf: Over, heart: Over = {}) =>
  carriedBy(stationWith(leaf, heart), 'leaf', 'heart')
const saying = (declarations: NonNullable<Over['declarations']>): Over => ({ declarations })
const gPerMl = densityGPerMl(100, 1, 'cup')
const beans = (number: number, level = 1): Missing => ({
  portionMg: portionMg(scoopVolumeMl(number), gPerMl, level),
  gPerMl,
  component: 'heart',
  remainingMg: 1_000_000,
})
const scoop = (number: number, other: Partial<ToolAtHand> = {}): ToolAtHand => ({
  id: `scoop ${number}`,
  tool: { tool: 'scoop', number },
  touched: [],
  allergenOnly: false,
  ...other,
})

describe('a missing scoop', () => {
  it('[F35] two level #16 stand in for one #8 without an error', () => {
    expect(nearestScoop(ALL_FREE, beans(8), [scoop(16), scoop(10)]).best).toEqual({
      measures: [{ id: 'scoop 16', count: 2 }],
      portionMg: 50_000,
      error: 0,
      portionsLeft: 20,
      portionsBefore: 20,
    })
  })

  it('[F35] the nearest, with its error and the portions that are left then', () => {
    const { best } = nearestScoop(ALL_FREE, beans(16), [scoop(12), scoop(20), scoop(30)])
    expect(best?.measures).toEqual([{ id: 'scoop 30', count: 2 }])
    expect(best?.error).toBeCloseTo(16 / 15 - 1, 4)
    expect([best?.portionsBefore, best?.portionsLeft]).toEqual([40, 37])
    const light = nearestScoop(ALL_FREE, beans(16), [scoop(20)]).best
    expect(light?.error).toBeCloseTo(-0.2, 9)
    expect([light?.portionsBefore, light?.portionsLeft]).toEqual([40, 50])
  })

  it('[F35] two tools together where that is nearest', () => {
    const { best } = nearestScoop(ALL_FREE, beans(6), [scoop(8), scoop(24)])
    expect(best?.measures).toEqual([
      { id: 'scoop 24', count: 1 },
      { id: 'scoop 8', count: 1 },
    ])
    expect(best?.error).toBeCloseTo(0, 9)
  })

  it('[F35] of those as near as each other the fewest measures', () => {
    const { best } = nearestScoop(ALL_FREE, beans(8), [scoop(16), scoop(24), scoop(30), scoop(8)])
    expect(best?.measures).toEqual([{ id: 'scoop 8', count: 1 }])
    const ladle: ToolAtHand = { ...scoop(4), id: 'ladle', tool: { tool: 'ladle', flOz: 4 } }
    expect(nearestScoop(ALL_FREE, beans(8), [scoop(16), ladle]).best?.measures).toEqual([
      { id: 'ladle', count: 1 },
    ])
  })

  it('[F36] a scoop that would carry an allergen across is never lent', () => {
    const station = stationWith(saying({ milk: 'contains' }))
    const cheese = scoop(8, { touched: ['leaf'] })
    expect(nearestScoop(station, beans(8), [cheese])).toEqual({
      best: null,
      notLent: [{ id: 'scoop 8', why: 'carries', code: 'milk', from: 'leaf', into: 'heart' }],
    })
    const other = nearestScoop(station, beans(8), [cheese, scoop(10)])
    expect(other.best?.measures).toEqual([{ id: 'scoop 10', count: 1 }])
  })

  it('[F36] a scoop that would carry an allergen back to where it has been is never lent', () => {
    const station = stationWith({}, saying({ milk: 'contains' }))
    expect(nearestScoop(station, beans(8), [scoop(8, { touched: ['leaf'] })])).toEqual({
      best: null,
      notLent: [{ id: 'scoop 8', why: 'carries', code: 'milk', from: 'heart', into: 'leaf' }],
    })
    expect(nearestScoop(station, beans(8), [scoop(8)]).notLent).toEqual([])
  })

  it('[F36] a scoop carries of everything it has been in since it was washed', () => {
    const station = stationWith({}, {})
    const both = scoop(8, { touched: ['leaf', 'cheese'] })
    const milk = {
      ...station,
      ingredients: station.ingredients.map((one) =>
        one.id === 'cheese'
          ? { ...one, declarations: { ...one.declarations, milk: 'contains' as const } }
          : one,
      ),
    }
    expect(nearestScoop(milk, beans(8), [both]).notLent).toEqual([
      { id: 'scoop 8', why: 'carries', code: 'milk', from: 'cheese', into: 'heart' },
    ])
    const leafOnly = nearestScoop(milk, beans(8), [scoop(8, { touched: ['leaf'] })])
    expect(leafOnly.notLent).toEqual([])
    expect(leafOnly.best?.measures).toEqual([{ id: 'scoop 8', count: 1 }])
  })

  it.each(['may-contain', 'unknown'] as const)('[F36] %s carries like contains', (state) => {
    const sesame = saying({ sesame: state })
    expect(carriedToHeart(sesame)).toBe('sesame')
    expect(carriedToHeart(sesame, sesame)).toBe('sesame')
    expect(carriedToHeart(sesame, saying({ sesame: 'contains' }))).toBeNull()
  })

  it('[F36] what nobody declared carries, and so does a label that nobody read', () => {
    const { milk: _, ...silent } = ingredient('leaf').declarations
    const station = stationWith()
    const silentOnMilk = {
      ...station,
      ingredients: station.ingredients.map((one) =>
        one.id === 'leaf' ? { ...one, declarations: silent } : one,
      ),
    }
    expect(carriedBy(silentOnMilk, 'leaf', 'heart')).toBe('milk')
    expect(carriedToHeart({ readOn: null })).toBe('milk')
    expect(carriedToHeart({})).toBeNull()
  })

  it('[F36] a kind counts beside its group: almonds are not carried into walnuts', () => {
    const walnuts = saying({ 'tree-nuts': 'contains', walnut: 'contains', almond: 'free' })
    const almonds = saying({ 'tree-nuts': 'contains', walnut: 'free', almond: 'contains' })
    expect(carriedToHeart(almonds, walnuts)).toBe('almond')
  })

  it('[F36] diets and claims count too, also where no allergen is in it', () => {
    expect(carriedToHeart({ traits: ['poultry'] })).toBe('vegetarian')
    expect(carriedToHeart({ traits: ['poultry'] }, { traits: ['poultry'] })).toBeNull()
    expect(carriedToHeart({ traits: ['beef'] }, { traits: ['meat', 'pork'] })).toBe('no-beef')
    expect(carriedToHeart({ traits: null })).toBe('vegetarian')
    expect(carriedToHeart({ claims: { kosher: 'declared' } })).toBe('halal')
    expect(carriedToHeart({ claims: {} }, { claims: {} })).toBe('halal')
  })

  it('[F36] of every need that the station knows none is left out', () => {
    for (const code of everyNeed(ALL_FREE))
      expect(saysOf(ALL_FREE, 'leaf')[code], code).toBe('free')
    const kinds = ['walnut', 'tuna', 'crab', 'molluscs', 'gluten', 'vegan', 'no-alcohol', 'kosher']
    expect(everyNeed(ALL_FREE)).toEqual(expect.arrayContaining(kinds))
  })

  it('[F36] the set kept for allergen orders is never lent', () => {
    expect(nearestScoop(ALL_FREE, beans(40), [scoop(40, { allergenOnly: true })])).toEqual({
      best: null,
      notLent: [{ id: 'scoop 40', why: 'allergen-only' }],
    })
  })

  it('[F35] no other way of one tool and up to four measures is nearer by over 1 percent', () => {
    const sizes = fc.uniqueArray(fc.integer({ min: 4, max: 100 }), { minLength: 1, maxLength: 5 })
    fc.assert(
      fc.property(sizes, fc.integer({ min: 4, max: 100 }), (numbers, wanted) => {
        const missing = beans(wanted)
        const { best } = nearestScoop(
          ALL_FREE,
          missing,
          numbers.map((one) => scoop(one)),
        )
        const error = Math.abs(best?.error ?? Infinity)
        for (const number of numbers)
          for (const count of [1, 2, 3, 4]) {
            const mg = portionMg(scoopVolumeMl(number), gPerMl, count)
            expect(error).toBeLessThanOrEqual(Math.abs(mg / missing.portionMg - 1) + 0.01 + 1e-9)
          }
      }),
      { seed: 17 },
    )
  })

  it('[F35] with no tool at hand there is none', () => {
    expect(nearestScoop(ALL_FREE, beans(8), [])).toEqual({ best: null, notLent: [] })
    expect(() => nearestScoop(ALL_FREE, { ...beans(8), portionMg: 0 }, [])).toThrow(RangeError)
  })
})
