import { describe, expect, it } from 'vitest'
import type { RunningState } from '#lib/service/state.ts'
import { offSaleMade, offSaleMaking } from '#lib/spine/consequences/off-sale-holds.ts'
import { asked, buildWith, offSale, stockWith, toThrowOut } from '#tests/support/happened.ts'
import { choose, type Given, at as of, ready, running, send } from '#tests/support/service.ts'

const on = (name: string, type: 'start' | 'finish'): Given => ({ type, ...of(name) })
const making = running(ready(send(choose('garden-chicken')), on('1A', 'start')))
const made = running(ready(send(choose('garden-chicken')), on('1A', 'start'), on('1A', 'finish')))
const bad = { offSale: offSale({ lastGoodAt: null }) }
const off = (state: RunningState, ...pans: string[]): RunningState =>
  pans.reduce((so, id) => stockWith(so, id, bad), state)
const hold = (pan: string) => ({
  type: 'buildHeld',
  ticket: 1,
  letter: 'A',
  reason: 'off-sale',
  pan,
})

describe('food that is read out of limits', () => {
  it('[B31] holds what is made of two such pans for the one, then for the other', () => {
    for (const [rule, state] of [
      [offSaleMaking, making],
      [offSaleMade, made],
    ] as const) {
      const after = off(state, 'pan-chicken', 'pan-slaw')
      const [first, ...others] = asked(rule, state, after)
      expect(others).toEqual([])
      expect(first).toMatchObject({ type: 'buildHeld', reason: 'off-sale' })
      const pan = first && 'pan' in first ? first.pan : ''
      const held = buildWith(after, '1A', {
        hold: { reason: 'off-sale', at: 1, told: null, pans: [`${pan}`] },
        stop: { reason: 'off-sale', at: 1, to: null },
      })
      const other = pan === 'pan-chicken' ? 'pan-slaw' : 'pan-chicken'
      expect(asked(rule, state, held)).toEqual([hold(other)])
    }
  })

  it('[B31] behind the line holds what was made of that', () => {
    const load = made.backupPans['back-up-chicken']?.load ?? 0
    const behind = buildWith(made, '1A', {
      took: [{ pan: 'back-up-chicken', amount: 10, load }] as never,
    })
    const after = stockWith(behind, 'back-up-chicken', bad, 'backup')
    expect(asked(offSaleMade, behind, after)).toEqual([hold('back-up-chicken')])
    expect(asked(offSaleMade, behind, off(behind, 'pan-tuna'))).toEqual([])
  })

  it('[B31] holds nothing that is thrown out, held for its guest or further on by then', () => {
    const after = off(made, 'pan-chicken')
    expect(asked(offSaleMade, made, after)).toEqual([hold('pan-chicken')])
    expect(asked(offSaleMade, made, toThrowOut(after, 'build', '1A'))).toEqual([])
    const stop = { reason: 'label', at: 1, to: null } as const
    expect(asked(offSaleMade, made, buildWith(after, '1A', { stop }))).toEqual([])
    expect(asked(offSaleMade, made, buildWith(after, '1A', { state: 'handed-over' }))).toEqual([])
  })
})
