import { describe, expect, it } from 'vitest'
import { inTurn, isLoud, prepList } from '#lib/rooms/prep/views/prep-list.ts'
import { PASS, preparedService } from '#tests/support/prep-stories.ts'
import { running } from '#tests/support/service.ts'

const HOUR = 3_600_000

describe('which task is told loudly', () => {
  it('[PP37] of all that are late the first one, and of none that isn’t', () => {
    const state = running(preparedService())
    const all = inTurn(prepList(state, (state.plan?.opensAt ?? 0) + 12 * HOUR))
    expect(all.filter(({ is }) => is === 'late').length).toBeGreaterThan(2)
    expect(all.filter((one) => isLoud(one, all))).toEqual([all[0]])
    const early = inTurn(prepList(state, state.at))
    expect(early.filter((one) => isLoud(one, early))).toEqual([])
  })

  it('[PP37] food that is out of the cooler for too long comes first, and is loud as well', () => {
    const told = running(preparedService(PASS))
    const all = inTurn(prepList(told, (told.plan?.opensAt ?? 0) + 12 * HOUR))
    expect(all[0]?.task.id).toBe('make.slaw')
    const late = all.find(({ is, out }) => is === 'late' && out === null)
    expect(all.filter((one) => isLoud(one, all)).map(({ task }) => task.id)).toContain('make.slaw')
    expect(late).toBeDefined()
    expect(all.filter((one) => isLoud(one, all)).length).toBeLessThanOrEqual(2)
    const soon = inTurn(prepList(told, told.at))
    expect(soon.some((one) => isLoud(one, soon))).toBe(false)
  })
})
