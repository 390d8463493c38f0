import { describe, expect, it } from 'vitest'
import { keepPlan } from '#lib/estimate/keep.ts'
import { demoStation } from '#server/demo-station.ts'

const builds = {
  'garden-chicken': { mean: 20, variance: 30 },
  'bean-and-pepper': { mean: 10, variance: 14 },
  'harbor-tuna': { mean: 5, variance: 6 },
}

/** The demo station, where the bean build may also have chicken. */
const withChickenInBoth = {
  ...demoStation,
  items: demoStation.items.map((item) =>
    item.id === 'bean-and-pepper'
      ? {
          ...item,
          parts: [...item.parts, { component: 'chicken', usual: 'no' as const, required: false }],
        }
      : item,
  ),
}

describe('what can’t be made again', () => {
  it('[Z36] is kept for the orders that can’t do without it, as many as they likely want', () => {
    const plan = keepPlan(withChickenInBoth, 'chicken', 40, builds)
    expect(plan.forItems).toEqual(['garden-chicken'])
    expect(plan.withoutIt).toEqual(['bean-and-pepper'])
    expect(plan.keep).toBeGreaterThan(24)
    expect(plan.keep).toBeLessThan(30)
    expect(plan.free).toBe(40 - plan.keep)
  })

  it('[Z36] all of it where less is left than they want', () => {
    expect(keepPlan(withChickenInBoth, 'chicken', 12.7, builds)).toMatchObject({
      keep: 12,
      free: 0,
    })
  })

  it('[Z36] none of it where only such orders take it, or none is such', () => {
    expect(keepPlan(demoStation, 'tuna', 8, builds)).toMatchObject({ keep: 0, free: 8 })
    const cheddar = keepPlan(demoStation, 'cheddar', 8, builds)
    expect(cheddar).toMatchObject({ forItems: [], keep: 0, free: 8 })
    expect(cheddar.withoutIt).toHaveLength(3)
  })
})
