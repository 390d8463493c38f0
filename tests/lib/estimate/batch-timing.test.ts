import { describe, expect, it } from 'vitest'
import { type BatchQuestion, planBatch } from '#lib/estimate/batch-timing.ts'
import type { ComponentDemand } from '#lib/estimate/demand.ts'

const NOW = 660
const CLOSES = 780

const wanted = (anHour: number, spread = 1.5): ComponentDemand => ({
  perTaking: [1],
  until: (minute) => {
    const mean = (anHour * (minute - NOW)) / 60
    return { mean, variance: mean * spread }
  },
})

const ask = (over: Partial<BatchQuestion>, portions = 10): BatchQuestion => ({
  demand: wanted(30),
  supply: { mean: portions, sd: 0, arriving: [] },
  remake: { minutes: 20, minutesPerLoad: 5, portionsPerLoad: 12, mostLoads: 3 },
  stakes: { lostCents: 400, leftCents: 100 },
  now: NOW,
  nextLook: NOW + 30,
  closes: CLOSES,
  ...over,
})

describe('when to start a batch', () => {
  it('[Z24] with plenty it is enough, and nothing is started', () => {
    const plan = planBatch(ask({}, 110))
    expect(plan).toMatchObject({ verdict: 'enough', loads: 0, portions: 0, saves: 0 })
  })

  it('[Z24] with little left it is started now, of as many loads as pay', () => {
    const plan = planBatch(ask({}))
    expect(plan.verdict).toBe('start')
    expect(plan.loads).toBeGreaterThanOrEqual(2)
    expect(plan.portions).toBe(plan.loads * 12)
    expect(plan.readyAt).toBe(NOW + 20)
    expect(plan.saves).toBeGreaterThan(0)
  })

  it('[Z24] with time to spare it waits, and says the latest sensible start', () => {
    const plan = planBatch(ask({ nextLook: NOW + 5 }, 40))
    expect(plan.verdict).toBe('wait')
    expect(plan.gapIfNow).toBeLessThan(0.01)
    expect(plan.latestStart).toBeGreaterThan(NOW + 15)
    expect(plan.latestStart).toBeLessThan(NOW + 60)
  })

  it('[Z25] a start five minutes later has no smaller chance of a gap', () => {
    for (const portions of [5, 10, 15, 20]) {
      const plan = planBatch(ask({}, portions))
      expect(plan.gapIfLater).toBeGreaterThanOrEqual(plan.gapIfNow)
    }
    expect(planBatch(ask({}, 2)).latestStart).toBeNull()
  })

  it('[Z25] where the lead can only be asked after the rush, it is started before', () => {
    const soon = planBatch(ask({ nextLook: NOW + 5 }, 24))
    const late = planBatch(ask({ nextLook: NOW + 40 }, 24))
    expect(soon.verdict).toBe('wait')
    expect(late.verdict).toBe('start')
  })

  it('[Z26] near closing another batch would only be waste', () => {
    const near = ask({ now: CLOSES - 25, nextLook: CLOSES - 5, demand: lastMinutes(4) }, 3)
    const plan = planBatch({ ...near, stakes: { lostCents: 50, leftCents: 120 } })
    expect(plan.verdict).toBe('only-waste')
    expect(plan.gapIfNever).toBeGreaterThan(0.1)
  })

  it('[Z26] what can’t be ready before close is too late', () => {
    const plan = planBatch(ask({ now: CLOSES - 15, demand: lastMinutes(8) }, 1))
    expect(plan).toMatchObject({ verdict: 'too-late', loads: 0 })
  })

  it('[Z26] the dearer the left-over, the fewer the loads', () => {
    const cheap = planBatch(ask({ stakes: { lostCents: 400, leftCents: 5 } }))
    const dear = planBatch(ask({ stakes: { lostCents: 400, leftCents: 390 } }))
    expect(cheap.loads).toBeGreaterThanOrEqual(dear.loads)
    const nothingLost = planBatch(ask({ stakes: { lostCents: 0, leftCents: 50 } }))
    expect(nothingLost.loads).toBe(0)
  })

  it('[Z27] what is under way counts: the same batch isn’t asked for twice', () => {
    const arriving = [
      { at: NOW + 15, portions: 36 },
      { at: NOW + 40, portions: 36 },
    ]
    const plan = planBatch(ask({ supply: { mean: 12, sd: 0, arriving } }))
    expect(plan.verdict).not.toBe('start')
  })

  it('[Z27] left-over expected is more with loads than without', () => {
    const plan = planBatch(ask({}, 40))
    expect(plan.leftWith).toBeGreaterThanOrEqual(plan.leftWithout)
  })
})

/** So many in the last 25 minutes. */
const lastMinutes = (all: number): ComponentDemand => ({
  perTaking: [1],
  until: (minute) => {
    const mean = (all * Math.max(0, minute - (CLOSES - 25))) / 25
    return { mean, variance: mean }
  },
})
