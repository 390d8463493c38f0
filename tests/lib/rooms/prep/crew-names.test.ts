import { describe, expect, it } from 'vitest'
import { crewNames, entryOf, lackOf, planCommandOf } from '#lib/rooms/prep/views/plan-entry.ts'
import { tasksEn } from '#lib/rooms/prep/words/tasks-en.ts'
import { plannedService } from '#tests/support/plans.ts'
import { SCHOOL_DAY } from '#tests/support/prep-stories.ts'
import { onward, running } from '#tests/support/service.ts'

const { plan } = running(onward(plannedService(), SCHOOL_DAY))
if (!plan) throw new RangeError('it was planned')
const TOLD = { c1: 'KT', c2: 'AB', c3: 'KT', c4: 'AB', c5: 'ZZ' }

describe('how the crew of a plan is called', () => {
  it('[PP62] by the initials that are told, of who is in no set-up too', () => {
    expect(crewNames(plan.crew, TOLD, tasksEn.person)).toEqual(TOLD)
  })

  it('[PP62] whose are gone as an adult, or a student by their number at a time', () => {
    expect(crewNames(plan.crew, { c5: 'ZZ' }, tasksEn.person)).toEqual({
      ...{ c1: 'adult', c2: 'student 1', c3: 'adult', c4: 'student 1', c5: 'ZZ' },
    })
    const names = Object.values(crewNames(plan.crew, {}, tasksEn.person))
    expect(names.at(-1)).toBe('student 2')
    expect(names.filter((name) => /^c\d/.test(name))).toEqual([])
  })

  it('[PP62] what was planned is sent again as it was told, and who is gone has to be said anew', () => {
    const entry = entryOf(plan, TOLD)
    expect(entry.crew.map(({ initials }) => initials)).toEqual(Object.values(TOLD))
    expect(planCommandOf(entry, 'alder-hall').crew).toEqual(
      plan.crew.map(({ id: _, ...one }, index) => ({
        ...one,
        initials: Object.values(TOLD)[index],
      })),
    )
    expect(lackOf(entry)).toBeNull()
    const { c5: _, ...gone } = TOLD
    expect(lackOf(entryOf(plan, gone))).toBe('initials')
  })
})
