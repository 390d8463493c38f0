import { describe, expect, it } from 'vitest'
import { plannedHere, whenOf } from '#lib/rooms/day/views/services-here.ts'
import { OPEN_PLANNED, plannedService, RICE } from '#tests/support/plans.ts'
import { NOTHING, onward } from '#tests/support/service.ts'

describe('what is told of a planned service', () => {
  it('[PL1] is when it is and how much is prepared, and nothing of one that was opened', () => {
    const told = plannedService(RICE)
    expect(plannedHere('s-1', told.state)).toMatchObject({
      service: 's-1',
      kind: 'real',
      on: '2026-11-26',
      doorsOpen: '11:00',
      batches: 1,
    })
    expect(plannedHere('s-1', onward(told, OPEN_PLANNED).state)).toBeNull()
    expect(plannedHere('s-1', NOTHING.state)).toBeNull()
  })

  it('[PL1] says which is today’s, and which is over', () => {
    const plan = { on: '2026-11-26', closesAt: 1_000 }
    expect(whenOf(plan, 999, '2026-11-26')).toBe('today')
    expect(whenOf(plan, 999, '2026-11-25')).toBe('ahead')
    expect(whenOf(plan, 1_000, '2026-11-26')).toBe('over')
  })
})
