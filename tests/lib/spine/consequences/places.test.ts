import { describe, expect, it } from 'vitest'
import type { DiscardReason, DiscardSignedOff } from '#lib/service/events/food-event.ts'
import type { OffSale } from '#lib/service/food-state.ts'
import type { StockKind } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'
import { gone, readBad } from '#lib/spine/consequences/places.ts'
import { happened, offSale, readAt, stockWith, toThrowOut } from '#tests/support/happened.ts'
import { ready, running } from '#tests/support/service.ts'

const PAN = 'pan-chicken'
const BACKUP = 'back-up-slaw'

const good = stockWith(running(ready()), PAN, { readings: [] })
const off = (so: OffSale | null, id = PAN, what: StockKind = 'pan'): RunningState =>
  stockWith(good, id, { offSale: so }, what)
const found = (then: OffSale | null, now: OffSale | null) =>
  readBad(happened(off(then), off(now))).map(({ lastGoodAt }) => lastGoodAt)

describe('food that is found out of its limits', () => {
  it('[B31] is named with its last good reading, on the line and behind it', () => {
    expect(found(null, offSale())).toEqual([1_000])
    expect(readBad(happened(good, off(offSale(), BACKUP, 'backup')))).toEqual([
      { what: 'backup', id: BACKUP, lastGoodAt: 1_000 },
    ])
  })

  it('[B31] is found once, and again once it is found anew or was never good', () => {
    expect(found(offSale(), offSale())).toEqual([])
    expect(found(offSale({ why: 'reading-missed' }), offSale())).toEqual([1_000])
    expect(found(offSale({ since: 1_900 }), offSale())).toEqual([1_000])
    expect(found(offSale(), offSale({ lastGoodAt: null }))).toEqual([null])
    expect(found(offSale({ lastGoodAt: null }), offSale())).toEqual([1_000])
    expect(found(offSale({ lastGoodAt: null }), offSale({ lastGoodAt: null }))).toEqual([])
  })

  it('[B31] isn’t found by a clock that is set back, by what is only missed, and by what ends', () => {
    expect(found(offSale(), offSale({ lastGoodAt: 500 }))).toEqual([])
    expect(found(null, offSale({ why: 'reading-missed' }))).toEqual([])
    expect(
      found(offSale({ why: 'reading-missed' }), offSale({ why: 'monitoring-missed' })),
    ).toEqual([])
    expect(found(offSale(), null)).toEqual([])
  })
})

describe('food that is to be thrown out from now on', () => {
  const bound = (before: RunningState, because: Parameters<typeof toThrowOut>[3] = 'time') =>
    gone(happened(before, toThrowOut(before, 'pan', PAN, because)))

  it('[B32] is named once, with what was known of it before', () => {
    expect(bound(good)).toEqual([{ what: 'pan', id: PAN, lastGoodAt: null, takesAlong: null }])
    const read = stockWith(good, PAN, { readings: [readAt(700), readAt(1_500)] })
    expect(bound(read)).toMatchObject([{ id: PAN, lastGoodAt: 1_500 }])
    const doubted = stockWith(read, PAN, { offSale: offSale() })
    expect(bound(doubted)).toMatchObject([{ id: PAN, lastGoodAt: 1_000 }])
    const known = toThrowOut(good, 'pan', PAN)
    expect(gone(happened(known, toThrowOut(known, 'backup', BACKUP)))).toMatchObject([
      { what: 'backup', id: BACKUP },
    ])
  })

  it('[B32] takes along what was made of it where it was bad, and not where it has a time', () => {
    const along = (because: Parameters<typeof toThrowOut>[3]) => bound(good, because)[0]?.takesAlong
    expect(along('too-warm')).toBe('too-warm')
    expect(along('out-of-limits')).toBe('out-of-limits')
    expect([along('time'), along('date')]).toEqual([null, null])
  })
})

describe('food that somebody threw out and nobody had found', () => {
  const signed = (
    reason: DiscardReason,
    what: DiscardSignedOff['what'] = 'pan',
    id = PAN,
  ): DiscardSignedOff => ({ type: 'discardSignedOff', what, id, amount: 1, reason })
  const thrown = (before: RunningState, ...events: DiscardSignedOff[]) =>
    gone(happened(before, before, events))
  const read = stockWith(good, PAN, { readings: [readAt(700), readAt(1_500)] })

  it('[B32] takes along what was made of it where it was bad, and not where it has a time', () => {
    const along = (reason: DiscardReason) =>
      thrown(read, signed(reason)).map((one) => one.takesAlong)
    for (const reason of ['out-of-limits', 'not-cooled', 'not-cooked'] as const)
      expect([reason, along(reason)]).toEqual([reason, ['out-of-limits']])
    for (const reason of ['past-time', 'past-date'] as const)
      expect([reason, along(reason)]).toEqual([reason, [null]])
    for (const reason of ['quality', 'left-over', 'other'] as const)
      expect([reason, along(reason)]).toEqual([reason, []])
  })

  it('[B32] was bad whatever they say where it was off sale', () => {
    const doubted = stockWith(read, PAN, { offSale: offSale({ why: 'reading-missed' }) })
    for (const reason of ['quality', 'past-time'] as const)
      expect(thrown(doubted, signed(reason))).toEqual([
        { what: 'pan', id: PAN, lastGoodAt: 1_000, takesAlong: 'out-of-limits' },
      ])
  })

  it('[B32] was good until its last reading, and never where it was not cooked or not cooled', () => {
    const lastGood = (reason: DiscardReason, before = read) =>
      thrown(before, signed(reason)).map(({ lastGoodAt }) => lastGoodAt)
    expect(lastGood('out-of-limits')).toEqual([1_500])
    expect(lastGood('out-of-limits', good)).toEqual([null])
    const doubted = stockWith(read, PAN, { offSale: offSale() })
    expect(lastGood('out-of-limits', doubted)).toEqual([1_000])
    for (const reason of ['not-cooled', 'not-cooked'] as const) {
      expect([reason, lastGood(reason)]).toEqual([reason, [null]])
      expect([reason, lastGood(reason, doubted)]).toEqual([reason, [null]])
    }
  })

  it('[B32] is named on the line and behind it, and neither as a batch nor as a build', () => {
    const both = thrown(read, signed('past-time'), signed('not-cooked', 'backup', BACKUP))
    expect(both.map(({ what, id }) => [what, id])).toEqual([
      ['pan', PAN],
      ['backup', BACKUP],
    ])
    expect(thrown(read, signed('not-cooked', 'batch', PAN))).toEqual([])
    expect(thrown(read, signed('not-cooked', 'build', PAN))).toEqual([])
    expect(thrown(read, signed('not-cooked', 'rest', BACKUP))).toEqual([])
  })

  it('[B32] isn’t named again where it was known, or where nothing stands', () => {
    expect(thrown(toThrowOut(read, 'pan', PAN), signed('not-cooked'))).toEqual([])
    expect(thrown(read, signed('not-cooked', 'pan', 'pan-of-nothing'))).toEqual([])
  })
})
