import { describe, expect, it } from 'vitest'
import type { BatchPlan } from '#lib/estimate/batch-timing.ts'
import { type JointItem, type JointPlan, jointLoads } from '#lib/estimate/joint-loads.ts'

/** Costs by loads, from none on; the least of them is what is planned by itself. */
const planned = (costs: readonly number[], over: Partial<JointPlan> = {}): JointPlan => {
  const loads = costs.indexOf(Math.min(...costs))
  const plan = { verdict: loads > 0 ? 'start' : 'wait', loads, costs } as unknown as BatchPlan
  return { component: 'beans', plan, portionsPerLoad: 12, there: 4, wanted: 40, ...over }
}

const both: JointItem = {
  components: ['beans', 'peppers'],
  builds: { mean: 40, variance: 60 },
}

describe('loads that are started together', () => {
  it('[Z70] make whole builds: no 36 beans to 15 peppers', () => {
    const beans = planned([900, 500, 320, 300])
    // By itself a second load of peppers hardly pays.
    const peppers = planned([200, 100, 105, 900], { component: 'peppers', portionsPerLoad: 15 })
    expect([beans.plan.loads, peppers.plan.loads]).toEqual([3, 1])
    expect(jointLoads([beans, peppers], [both])).toEqual({ beans: 3, peppers: 2 })
  })

  it('[Z70] go no further than that pays', () => {
    const beans = planned([900, 310, 305, 300])
    const peppers = planned([200, 100, 9_000, 9_000], {
      component: 'peppers',
      portionsPerLoad: 12,
    })
    expect(jointLoads([beans, peppers], [both])).toEqual({ beans: 3, peppers: 1 })
  })

  it('[Z70] stay as they are where both go far enough, no build has both, or one isn’t started', () => {
    const beans = planned([900, 500, 320, 300])
    const enough = planned([200, 100, 105, 260], { component: 'peppers', there: 90 })
    const plenty = { ...beans, there: 90 }
    expect(jointLoads([plenty, enough], [both])).toEqual({ beans: 3, peppers: 1 })
    const peppers = planned([200, 100, 105, 260], { component: 'peppers' })
    const apart: JointItem = { ...both, components: ['beans', 'slaw'] }
    expect(jointLoads([beans, peppers], [apart])).toEqual({ beans: 3, peppers: 1 })
    const waits = planned([100, 200, 300], { component: 'peppers' })
    expect(jointLoads([beans, waits], [both])).toEqual({ beans: 3 })
  })

  it('[Z70] are never more than a batch can have, and never none', () => {
    const beans = planned([900, 500, 320, 300])
    const scarce = planned([200, 100], { component: 'peppers', there: 0, portionsPerLoad: 2 })
    const loads = jointLoads([beans, scarce], [both])
    expect(loads.peppers).toBe(1)
    expect(loads.beans).toBeGreaterThanOrEqual(1)
  })
})
