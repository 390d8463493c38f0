import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { blocksOf, dotPlaces, loadsABlock, STACK_PX } from '#lib/rooms/prep/views/stacks.ts'
import { planEn } from '#lib/rooms/prep/words/plan-en.ts'

const pan = fc
  .record({
    loads: fc.nat({ max: 40 }),
    each: fc.integer({ min: 1, max: 60 }),
    atHand: fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 900 })),
  })
  .map(({ loads, each, atHand }) => ({ loads, made: loads * each, atHand }))

describe('how loads stand up from their pans', () => {
  test('[PR21] a block is one load as long as all stacks have room, else as few as give it, which the legend says', () => {
    expect(loadsABlock([{ loads: 5, atHand: 0 }])).toBe(1)
    expect(loadsABlock([{ loads: 5, atHand: 9 }])).toBe(2)
    expect(
      loadsABlock([
        { loads: 2, atHand: 0 },
        { loads: 34, atHand: 0 },
      ]),
    ).toBe(10)
    expect(planEn.legend.load(1)).toBe('a load')
    expect(planEn.legend.load(10)).toBe('10 loads')
  })

  test('[PR21] no stack is higher than its room, its portions are all of it, and every number can be read', () => {
    fc.assert(
      fc.property(fc.array(pan, { minLength: 1, maxLength: 12 }), (pans) => {
        const scale = loadsABlock(pans)
        const most = Math.max(1, ...pans.map(({ made, atHand }) => made + atHand))
        for (const one of pans) {
          const blocks = blocksOf(one, scale, most)
          const sum = blocks.reduce((all, { portions }) => all + portions, 0)
          expect(sum).toBe(one.made + one.atHand)
          expect(blocks.every(({ height }) => height >= 18)).toBe(true)
          expect(blocks.reduce((all, { height }) => all + height + 2, 0)).toBeLessThanOrEqual(
            STACK_PX,
          )
        }
      }),
    )
  })

  test('[PR21] of two stacks that have room the one with twice the portions is about twice as high', () => {
    const height = (loads: number) =>
      blocksOf({ loads, made: 20 * loads, atHand: 0 }, 1, 80).reduce(
        (all, one) => all + one.height + 2,
        0,
      )
    expect(height(4)).toBe(100)
    expect(height(2)).toBe(50)
    expect(
      blocksOf({ loads: 7, made: 84, atHand: 5 }, 2, 89).map(({ portions }) => portions),
    ).toEqual([12, 24, 24, 24, 5])
  })

  test('[PR21] ten dots stand at their days’ height, none over another and none above the stack', () => {
    const days = fc.array(fc.nat({ max: 200 }), { minLength: 10, maxLength: 10 })
    fc.assert(
      fc.property(days, (wanted) => {
        const places = dotPlaces(
          [...wanted].sort((a, b) => a - b),
          200,
        )
        for (const [index, one] of places.entries()) {
          expect(one.bottom).toBeGreaterThanOrEqual(0)
          expect(one.bottom + 11).toBeLessThanOrEqual(STACK_PX)
          for (const other of places.slice(index + 1))
            expect(one.left !== other.left || Math.abs(one.bottom - other.bottom) >= 11).toBe(true)
        }
      }),
    )
  })
})
