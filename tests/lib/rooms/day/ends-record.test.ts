import { describe, expect, it } from 'vitest'
import { serviceRecord } from '#lib/rooms/day/facts/service-record.ts'
import { given, inPan, ofPortions, onward, running, type Told } from '#tests/support/service.ts'

const recordOf = (told: Told) => serviceRecord(running(told), told.events)

describe('the record of a service', () => {
  it('[EN15] counts what was set aside, what the bin took by reason, and how each was measured', () => {
    const ends = { type: 'endFood', what: 'pan', initials: 'KT' } as const
    const slaw = ofPortions('slaw', 3)
    const told = given(
      { ...ends, id: 'pan-slaw', end: 'cold', how: 'weighed', amount: slaw },
      { ...ends, id: 'pan-tuna', end: 'throw-out', how: 'eye', amount: 500_000 },
      { type: 'throwOutHot', initials: 'KT' },
    )
    const record = recordOf(onward(told, { type: 'close' }))
    const before = recordOf(given({ type: 'close' })).components.slaw?.left ?? 0
    expect(record.components.slaw?.left).toBe(before - inPan(given(), 'pan-slaw'))
    expect(record.components.slaw).toMatchObject({ setAside: slaw, wasted: 0 })
    expect(record.components.tuna).toMatchObject({ wasted: 500_000 })
    expect(record.components.tuna?.wastedFor).toEqual({ 'left-over': 500_000 })
    expect(record.ends?.slice(0, 2)).toEqual([
      { what: 'pan', end: 'cold', component: 'slaw', amount: slaw, how: 'weighed' },
      { what: 'pan', end: 'throw-out', component: 'tuna', amount: 500_000, how: 'eye' },
    ])
    expect(record.ends?.slice(2).map(({ how }) => how)).toEqual(
      record.ends?.slice(2).map(() => 'not-checked'),
    )
    expect(JSON.stringify(record.ends)).not.toContain('KT')
  })

  it('[EN15] says nothing of ends where nobody told any, as before', () => {
    const record = recordOf(given({ type: 'close' }))
    expect(record).not.toHaveProperty('ends')
    expect(record.components.slaw).not.toHaveProperty('setAside')
  })
})
