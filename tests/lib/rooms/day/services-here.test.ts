import { describe, expect, it } from 'vitest'
import {
  nextPlanned,
  type PlannedHere,
  plannedBeside,
  plannedHere,
  whenOf,
} from '#lib/rooms/day/views/services-here.ts'
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

  const planned = (service: string, closesAt: number): PlannedHere => ({
    ...{ service, kind: 'real', on: '2026-11-26', doorsOpen: '11:00', doorsClose: '13:00' },
    ...{ opensAt: closesAt - 500, closesAt, batches: 0 },
  })
  const seen = (at: number) => ({
    ...{ station: null, followed: { service: 's-open', isOpen: true }, at },
    planned: [planned('s-1', 1_000), planned('s-2', 2_000)],
  })

  it('[PP32] the crew’s tablets follow the next that isn’t over, and none of those that are', () => {
    expect(nextPlanned(seen(999))?.service).toBe('s-1')
    expect(nextPlanned(seen(1_000))?.service).toBe('s-2')
    expect(nextPlanned(seen(2_000))).toBeNull()
  })

  it('[PP31] what is planned beside the followed one is told of, itself never', () => {
    expect(plannedBeside(seen(0), 's-open').map(({ service }) => service)).toEqual(['s-1', 's-2'])
    expect(plannedBeside(seen(0), 's-1').map(({ service }) => service)).toEqual(['s-2'])
    expect(plannedBeside({ planned: [] }, null)).toEqual([])
  })

  it('[PL1] says which is today’s, and which is over', () => {
    const plan = { on: '2026-11-26', closesAt: 1_000 }
    expect(whenOf(plan, 999, '2026-11-26')).toBe('today')
    expect(whenOf(plan, 999, '2026-11-25')).toBe('ahead')
    expect(whenOf(plan, 1_000, '2026-11-26')).toBe('over')
  })
})
