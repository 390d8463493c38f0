import { describe, expect, it } from 'vitest'
import { evolve } from '#lib/spine/evolve.ts'
import { ready, running } from '#tests/support/service.ts'

describe('a top-up out of a back-up pan', () => {
  it('[S130] brings along what a foreign scoop left in that, beside what was in the pan', () => {
    const told = ready(
      { type: 'soilPan', pan: 'pan-slaw', by: 'tuna' },
      { type: 'soilPan', pan: 'pan-slaw', by: 'cheddar', backup: true },
    )
    const { pans, backupPans, at } = running(told)
    expect(pans['pan-slaw']?.soiledBy).not.toContain('cheddar')
    expect(backupPans['back-up-slaw']?.soiledBy).toContain('cheddar')
    const food = pans['pan-slaw']?.food
    const from = backupPans['back-up-slaw']
    if (!food || !from) throw new Error('no slaw')
    const topUp = (amount: number) =>
      running({
        events: [],
        state: evolve(told.state, {
          type: 'panToppedUp',
          pan: 'pan-slaw',
          amount,
          batch: null,
          from: 'back-up-slaw',
          food,
          reading: null,
          position: told.events.length + 1,
          at,
          command: 'c',
        }),
      })
    const some = topUp(1_000)
    expect(some.pans['pan-slaw']?.soiledBy).toEqual(['tuna', 'cheddar'])
    expect(some.backupPans['back-up-slaw']?.soiledBy).toContain('cheddar')
    const all = topUp(from.amount)
    expect(all.pans['pan-slaw']?.soiledBy).toEqual(['tuna', 'cheddar'])
    expect(all.backupPans['back-up-slaw']).toMatchObject({ amount: 0, soiledBy: [] })
  })
})
