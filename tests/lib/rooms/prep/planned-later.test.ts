import { describe, expect, it } from 'vitest'
import { formWords } from '#lib/rooms/food/words/food-forms-en.ts'
import { plannedLater } from '#lib/rooms/prep/facts/planned-later.ts'
import { preparedOf } from '#lib/rooms/prep/facts/tasks-now.ts'
import { plannedService } from '#tests/support/plans.ts'
import { BEANS, preparedService, SLAW, TICK } from '#tests/support/prep-stories.ts'
import { type Given, running } from '#tests/support/service.ts'

const DAY = 24 * 3_600_000

const state = running(preparedService())
const slaw = preparedOf(state)?.tasks.find(({ id }) => id === 'make.slaw')?.from ?? Number.NaN
/** The station's midnight before it, in Chicago. */
const MIDNIGHT = Date.parse('2026-11-26T06:00:00Z')

describe('a making that is started on a day before its own', () => {
  it('[PP63] says when the plan has it; from midnight on nothing is asked', () => {
    expect(slaw).toBeGreaterThan(MIDNIGHT)
    expect(plannedLater(state, 'slaw', MIDNIGHT - 1)).toBe(slaw)
    expect(plannedLater(state, 'slaw', MIDNIGHT)).toBeNull()
    expect(plannedLater(state, 'slaw', slaw + 60_000)).toBeNull()
    expect(plannedLater(state, 'slaw', slaw + DAY)).toBeNull()
  })

  it('[PP63] what is cooked ahead counts by its own day, not by the one of the doors', () => {
    const ahead: Given = {
      type: 'planPrep',
      foods: [SLAW, { ...BEANS, ahead: true, coolsIn: { first: 30, total: 80 } }],
    }
    const early = running(preparedService(ahead))
    const cook = preparedOf(early)?.tasks.find(({ id }) => id === 'cook.beans')?.from ?? Number.NaN
    expect(plannedLater(early, 'beans', cook)).toBeNull()
    expect(plannedLater(early, 'beans', cook - DAY)).toBe(cook)
  })

  it('[PP63] nothing is asked of what is made, of what nobody planned, and without a plan', () => {
    expect(plannedLater(running(preparedService(TICK)), 'slaw', MIDNIGHT - 1)).toBeNull()
    expect(plannedLater(state, 'rice', MIDNIGHT - 1)).toBeNull()
    expect(plannedLater(running(plannedService()), 'slaw', MIDNIGHT - 1)).toBeNull()
  })

  it('[PP63] is asked in words, with its weekday', () => {
    expect(formWords.plannedFor('Thu, Nov 26', '9:10')).toBe('Planned for Thu, Nov 26, 9:10')
  })
})
