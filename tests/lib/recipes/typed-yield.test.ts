import { describe, expect, it } from 'vitest'
import { ratio, times } from '#lib/recipes/rational.ts'
import { typedYield, type Yield } from '#lib/recipes/typed-yield.ts'
import { scoopMl, US_G, US_ML } from '#lib/recipes/units.ts'

const portions = (count: number): Yield => ({ kind: 'portions', count: ratio(count), each: null })
const quarts = (count: number): Yield => ({
  kind: 'amount',
  amount: { kind: 'volume', size: times(US_ML.qt, ratio(count)), written: 'us' },
})

const UNDERSTOOD: readonly (readonly [string, Yield])[] = [
  ['serves 24', portions(24)],
  ['Serves: 24', portions(24)],
  ['24 portions', portions(24)],
  ['24 servings', portions(24)],
  ['makes 24', portions(24)],
  ['24', portions(24)],
  ['4 qt', quarts(4)],
  ['Yield: 4 qt', quarts(4)],
  ['makes about 1 gal', quarts(4)],
  [
    '33 level #16 scoops',
    {
      kind: 'amount',
      amount: { kind: 'volume', size: times(scoopMl(16), ratio(33)), written: 'us' },
    },
  ],
  ['makes 2 half pans', { kind: 'pans', count: ratio(2), size: 'half', depthIn: null }],
  ['1 full pan, 2 1/2 in deep', { kind: 'pans', count: ratio(1), size: 'full', depthIn: 2.5 }],
  ['3 third-size pans 4 inches', { kind: 'pans', count: ratio(3), size: 'third', depthIn: 4 }],
  [
    '20 servings of 4 oz',
    {
      kind: 'portions',
      count: ratio(20),
      each: { kind: 'weight', size: times(US_G.oz, ratio(4)), written: 'us' },
    },
  ],
  [
    '50 portions, 1/4 cup',
    {
      kind: 'portions',
      count: ratio(50),
      each: { kind: 'volume', size: times(US_ML.cup, ratio(1, 4)), written: 'us' },
    },
  ],
  ['24 pieces', { kind: 'amount', amount: { kind: 'count', size: ratio(24), of: 'piece' } }],
]

describe('yields as typed', () => {
  it.each(UNDERSTOOD)('[RC5] %s is understood', (typed, yields) => {
    expect(typedYield(typed)).toEqual({ ok: true, yields })
  })

  it.each([
    ['', 'empty', ''],
    ['serves', 'no-number', ''],
    ['serves many', 'no-number', 'many'],
    ['serves 0', 'zero', ''],
    ['0 qt', 'zero', ''],
    ['serves 20-24', 'range', '20 - 24'],
    ['20 to 24 portions', 'range', '20 to 24'],
    ['2 half pans, 3 in', 'unknown-word', ', 3 in'],
    ['2 buckets', 'unknown-word', 'buckets'],
    ['20 servings of many', 'unknown-word', 'many'],
  ])('[RC5] %j is refused as %s at %j', (typed, code, at) => {
    expect(typedYield(typed)).toEqual({ ok: false, code, at })
  })
})
