/** What common cans hold. */
import { type Rational, ratio, times } from '#lib/recipes/rational.ts'
import { US_ML } from '#lib/recipes/units.ts'

export interface Can {
  readonly size: string
  /** Millilitres: as a rule, at least and at most, where sources differ. */
  readonly ml: Rational
  readonly leastMl: Rational
  readonly mostMl: Rational
  readonly source: string
}

const cups = (over: number, under = 1): Rational => times(US_ML.cup, ratio(over, under))

const one = (size: string, ml: Rational, source: string): Can => ({
  size,
  ml,
  leastMl: ml,
  mostMl: ml,
  source,
})

/**
 * By the number on the can. What a #10 holds differs by what is in it, so it is a range: 105 fl oz
 * (GNU units), 12 to 13 cups (a steam-cooker manual), about 12 cups (a can maker), 12 to 13 2/3
 * cups (USDA Food Buying Guide, from memory). No weight: 6 lb to 7 lb 5 oz, so the label says it.
 */
export const CANS: readonly Can[] = [
  {
    size: '10',
    ml: cups(105, 8),
    leastMl: cups(12),
    mostMl: cups(41, 3),
    source: 'GNU units 3.22; range: USDA Food Buying Guide, from memory',
  },
  one('2 1/2', cups(7, 2), 'American Can Company, common can sizes; GNU units 3.22'),
  one('300', cups(7, 4), 'American Can Company, common can sizes'),
  one('303', cups(2), 'American Can Company, common can sizes'),
]

/** The can of a number; null where no source for its content is known. */
export const canOf = (size: string): Can | null => CANS.find((can) => can.size === size) ?? null

export interface CanContent {
  readonly ml: Rational
  readonly leastMl: Rational
  readonly mostMl: Rational
}

/** What so many cans of a number hold; null where no source tells. */
export const contentOf = (size: string, count: Rational): CanContent | null => {
  const can = canOf(size)
  return can === null
    ? null
    : {
        ml: times(can.ml, count),
        leastMl: times(can.leastMl, count),
        mostMl: times(can.mostMl, count),
      }
}
