import { describe, expect, it } from 'vitest'
import { ONE, ratio } from '#lib/recipes/rational.ts'
import { notInStep } from '#lib/recipes/sheet/not-in-step.ts'
import { typedYield, type Yield } from '#lib/recipes/typed-yield.ts'

const yields = (typed: string): Yield => {
  const found = typedYield(typed)
  if (!found.ok) throw new Error(typed)
  return found.yields
}
const shallow = yields('1 full pan, 2 1/2 in')
const deep = yields('2 half pans, 4 in')
const codes = (found: ReturnType<typeof notInStep>) => found.map(({ code }) => code)

describe('what doesn’t go up with the amounts', () => {
  it('[RC63] a card as it is, in its own pans, takes its own time', () => {
    expect(notInStep(shallow, ONE, ONE, [null, shallow])).toEqual([])
    expect(notInStep(null, ratio(5, 4), ONE, [])).toEqual([])
  })

  it('[RC63] much more of it at once takes another time; in batches of the card’s size it doesn’t', () => {
    expect(codes(notInStep(null, ratio(4), ONE, []))).toEqual(['time'])
    expect(codes(notInStep(null, ratio(4), ratio(1, 4), []))).toEqual([])
    expect(codes(notInStep(null, ONE, ratio(1, 2), []))).toEqual(['time'])
  })

  it('[RC63] another depth is told with both, also where the card says none', () => {
    expect(notInStep(shallow, ONE, ONE, [deep])).toEqual([
      { code: 'time' },
      { code: 'depth', card: 2.5, made: 4 },
    ])
    expect(notInStep(yields('4 qt'), ONE, ONE, [null, deep])).toContainEqual({
      code: 'depth',
      card: null,
      made: 4,
    })
    // What it lies in at the end counts, not what was asked for.
    expect(notInStep(shallow, ONE, ONE, [deep, shallow])).toEqual([])
  })
})
