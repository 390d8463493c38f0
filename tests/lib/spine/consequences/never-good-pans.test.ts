import { describe, expect, it } from 'vitest'
import type { DiscardSignedOff } from '#lib/service/events/food-event.ts'
import type { HeldStock } from '#lib/service/food-state.ts'
import { neverGoodPans } from '#lib/spine/consequences/never-good-pans.ts'
import { asked, offSale, stockWith, touched } from '#tests/support/happened.ts'
import { ready, running } from '#tests/support/service.ts'

const discarded = (over: Partial<DiscardSignedOff> = {}): DiscardSignedOff => ({
  type: 'discardSignedOff',
  what: 'batch',
  id: 'b77',
  amount: 0,
  reason: 'not-cooked',
  ...over,
})
const of = (
  over: Partial<HeldStock>,
  event: DiscardSignedOff = discarded(),
  what: 'pan' | 'backup' = 'pan',
) => {
  const id = what === 'pan' ? 'pan-chicken' : 'back-up-chicken'
  const before = stockWith(running(ready()), id, { batches: ['b1', 'b77'], ...over }, what)
  return asked(neverGoodPans, before, touched(before, 'batches'), [event])
}
const off = { type: 'takenOffSale', why: 'out-of-limits', lastGoodAt: null }

describe('what was loaded of a batch that was never good', () => {
  it('[B21] is off sale on the line and behind it, for as little as there is', () => {
    const line = { ...off, what: 'pan', id: 'pan-chicken' }
    expect(of({ amount: 1 })).toEqual([line])
    expect(of({}, discarded({ reason: 'not-cooled' }))).toEqual([line])
    expect(of({}, discarded(), 'backup')).toEqual([
      { ...off, what: 'backup', id: 'back-up-chicken' },
    ])
    expect(of({ batches: ['b1'] })).toEqual([])
    expect(of({}, discarded({ reason: 'quality' }))).toEqual([])
    expect(of({}, discarded({ what: 'pan' }))).toEqual([])
  })

  it('[B21] is off sale also where it was counted to nothing, and not where nothing stands', () => {
    expect(of({ amount: 0, ended: true })).toHaveLength(1)
    expect(of({ amount: 0 })).toEqual([])
  })

  it('[B21] is found whatever it was off sale for, and once', () => {
    expect(of({ offSale: offSale() })).toHaveLength(1)
    expect(of({ offSale: offSale({ why: 'reading-missed', lastGoodAt: null }) })).toHaveLength(1)
    expect(of({ offSale: offSale({ lastGoodAt: null }) })).toEqual([])
  })
})
