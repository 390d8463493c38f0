import { describe, expect, it } from 'vitest'
import {
  nextPlanned,
  type PlannedHere,
  plannedBeside,
  plannedHere,
  whenOf,
} from '#lib/rooms/day/views/services-here.ts'
import { plannedWords } from '#lib/rooms/day/words/planned-en.ts'
import { OPEN_PLANNED, plannedService, RICE } from '#tests/support/plans.ts'
import { BEANS, PASS, preparedService, SLAW, TICK } from '#tests/support/prep-stories.ts'
import { demoStation, type Given, NOTHING, onward } from '#tests/support/service.ts'

const named = ({ component }: { readonly component: string }) => ({
  component,
  name: demoStation.components.find(({ id }) => id === component)?.name ?? '',
})
const SLAW_NAMED = named(SLAW)
const BEANS_NAMED = named(BEANS)

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

  it('[PR63] names what its tasks began and no batch counts, since it is forgotten with the plan', () => {
    const { prepared, overWay } = plannedWords
    const here = (...more: Given[]) => {
      const told = plannedHere('s-1', preparedService(...more).state)
      if (told === null) throw new Error('it is planned')
      return told
    }
    expect(here()).not.toHaveProperty('inNoBatch')
    expect(prepared(here())).toBe('nothing prepared yet')
    expect(overWay(here())).toBe('Drop it.')
    for (const one of [TICK, PASS, { ...TICK, task: 'cook.beans' }]) {
      const { component, name } = one.task === 'cook.beans' ? BEANS_NAMED : SLAW_NAMED
      expect(here(one).inNoBatch).toEqual([name])
      expect(prepared(here(one))).toBe(`begun, and in no batch: ${name}`)
      expect(overWay(here(one))).toContain('throw it out first')
      const batch: Given = { type: 'startBatch', batch: 'b1', component, loads: 1 }
      expect(here(one, batch)).not.toHaveProperty('inNoBatch')
    }
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
