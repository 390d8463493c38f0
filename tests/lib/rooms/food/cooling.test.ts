import { describe, expect, it } from 'vitest'
import { notYetClosed } from '#lib/rooms/day/facts/not-yet-closed.ts'
import { coolingStay } from '#lib/rooms/food/facts/cooling/who-stays.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import { at, fahrenheit, minute, read, until, whenAt } from '#tests/support/food.ts'
import { codeOf, type Given, openedService, refusalOf, running } from '#tests/support/service.ts'

describe('cooling', () => {
  const batch: readonly Given[] = [
    { type: 'startBatch', component: 'chicken', loads: 1, startedAt: minute(-60) },
    {
      type: 'recordCooking',
      batch: 'b1',
      ...{ reading: { ...fahrenheit(168, { at: minute(-10) }), heldSeconds: 5 } },
      initials: 'KT',
    },
    { type: 'finishBatch', batch: 'b1', amount: 1_000_000, finishedAt: minute(0) },
  ]
  const cooked = at(openedService(), 1, ...batch)
  const cooling = (degrees: number, over: object = {}): Given => ({
    type: 'recordCooling',
    batch: 'b1',
    ...read(degrees),
    ...over,
  })
  const stays = { presentUntil: minute(400) }

  it('[B19] starts only where somebody stays to read both stages', () => {
    expect(refusalOf(whenAt(cooked, 2, cooling(140)))).toMatchObject({
      code: 'cannot-cool',
      stage: 1,
      why: 'nobody-there',
      by: minute(2 + 120),
    })
    expect(codeOf(whenAt(cooked, 2, cooling(140, stays)))).toBeNull()
  })

  it('[F92] nothing is read of a batch whose food is all on the line, and it holds up no close', () => {
    const amount = cooked.state.batches.b1?.amount ?? 0
    const load = { type: 'load', pan: 'pan-chicken', batch: 'b1', ...read(150) } as const
    const some = at(cooked, 2, { ...load, amount: amount - 1 })
    expect(codeOf(whenAt(some, 3, cooling(140, stays)))).toBeNull()
    const all = at(cooked, 2, { ...load, amount })
    expect(refusalOf(whenAt(all, 3, cooling(140, stays)))).toEqual({
      code: 'nothing-there',
      id: 'chicken',
    })
    // The pot held more than was said: what is left in it can be said still, and read again.
    const more: Given = { type: 'finishBatch', batch: 'b1', amount: amount + 1, measured: true }
    const corrected = at(all, 3, more)
    expect(corrected.state.batches.b1?.amount).toBe(amount + 1)
    expect(codeOf(whenAt(corrected, 4, cooling(140, stays)))).toBeNull()
    // As a log of before may have it.
    const state = running(all)
    const [taken] = running(at(cooked, 2, cooling(140, stays))).batches.b1?.cooling ?? []
    const b1 = { ...state.batches.b1, cooling: [taken] } as BatchState
    const { at: now } = state
    expect(notYetClosed({ ...state, batches: { b1 } }, now)).toEqual([])
    expect(notYetClosed({ ...state, batches: { b1: { ...b1, loaded: 0 } } }, now)).toEqual([
      { code: 'still-cooling', batch: 'b1' },
    ])
  })

  it('[B19] missed in its first stage takes the batch off sale; once more after reheating', () => {
    const started = at(cooked, 2, cooling(140, stays))
    expect(started.state.batches.b1?.offSale).toBeNull()
    expect(until(started, 122).state.batches.b1?.offSale).toBeNull()
    const missed = until(started, 123)
    expect(missed.state.batches.b1?.offSale).toMatchObject({ why: 'cooling-missed' })
    const again: Given = {
      type: 'resolveOffSale',
      what: 'batch',
      id: 'b1',
      way: 'reheat',
      place: 'range',
      startedAt: minute(124),
      reading: { ...fahrenheit(166, { at: minute(130) }), heldSeconds: 15 },
      initials: 'KT',
      ...stays,
    }
    expect(codeOf(whenAt(missed, 131, again))).toBe('not-in-charge')
    const once = at(missed, 131, again)
    expect(once.state.batches.b1).toMatchObject({ offSale: null, cooledAgain: true })
    const twice = until(once, 260)
    expect(twice.state.batches.b1?.offSale).not.toBeNull()
    expect(
      refusalOf(
        whenAt(twice, 261, { ...again, startedAt: minute(260) } as Given, { by: 'in-charge' }),
      ),
    ).toMatchObject({ code: 'way-not-allowed', ways: ['discard'] })
  })

  it('[B40] cooled again starts only where somebody stays to read both stages', () => {
    const missed = until(at(cooked, 2, cooling(140, stays)), 123)
    const again = (presentUntil?: number): Given => ({
      type: 'resolveOffSale',
      what: 'batch',
      id: 'b1',
      way: 'reheat',
      place: 'range',
      startedAt: minute(124),
      reading: { ...fahrenheit(166, { at: minute(130) }), heldSeconds: 15 },
      initials: 'KT',
      ...(presentUntil === undefined ? {} : { presentUntil }),
    })
    const refused = (command: Given) => refusalOf(whenAt(missed, 131, command, { by: 'in-charge' }))
    const away = { code: 'cannot-cool', batch: 'b1', why: 'nobody-there' }
    expect(refused(again())).toMatchObject({ ...away, stage: 1 })
    expect(refused(again(minute(130)))).toMatchObject({ ...away, stage: 1 })
    expect(at(missed, 131, again(minute(400))).events.at(-1)).toMatchObject({
      type: 'offSaleResolved',
      presentUntil: minute(400),
    })
  })

  it('[F87] keeps who stays until it is over, and takes it said anew', () => {
    const until = ({ state }: typeof cooked) => state.batches.b1?.presentUntil
    const started = at(cooked, 2, cooling(140, stays))
    expect(until(started)).toBe(minute(400))
    const warm = at(started, 100, cooling(69))
    expect(until(warm)).toBe(minute(400))
    expect(until(at(started, 100, cooling(69, { presentUntil: minute(460) })))).toBe(minute(460))
    expect(at(warm, 300, cooling(40)).state.batches.b1).not.toHaveProperty('presentUntil')
    expect(at(warm, 200, cooling(80)).state.batches.b1).not.toHaveProperty('presentUntil')
    const gone: Given = {
      type: 'throwOut',
      what: 'batch',
      id: 'b1',
      amount: 1_000_000,
      reason: 'quality',
      initials: 'KT',
    }
    expect(at(warm, 101, gone).state.batches.b1).not.toHaveProperty('presentUntil')
  })

  it('[F87] ends where it was missed, and begins anew as it is cooled again', () => {
    const missed = until(at(cooked, 2, cooling(140, stays)), 123)
    expect(missed.state.batches.b1).not.toHaveProperty('presentUntil')
    const again: Given = {
      type: 'resolveOffSale',
      what: 'batch',
      id: 'b1',
      way: 'reheat',
      place: 'range',
      startedAt: minute(124),
      reading: { ...fahrenheit(166, { at: minute(130) }), heldSeconds: 15 },
      initials: 'KT',
      presentUntil: minute(450),
    }
    expect(at(missed, 131, again).state.batches.b1?.presentUntil).toBe(minute(450))
  })

  it('[F87] is too short where they leave before its stage ends', () => {
    const started = at(cooked, 2, cooling(140, { presentUntil: minute(60) }))
    const of = (told: typeof cooked, minutes: number) => {
      const { batches, station } = running(told)
      return batches.b1 && coolingStay(station, batches.b1, minute(minutes))
    }
    expect(of(started, 10)).toEqual({ until: minute(60), isTooShort: true })
    expect(of(at(cooked, 2, cooling(140, { presentUntil: minute(122) })), 10)).toEqual({
      until: minute(122),
      isTooShort: false,
    })
    expect(of(cooked, 10)).toBeNull()
    const cold = at(at(started, 50, cooling(69)), 58, cooling(40))
    expect(of(cold, 59)).toBeNull()
  })

  it('[B19] read too warm misses its stage at once; in time it is cooled', () => {
    const started = at(cooked, 2, cooling(140, stays))
    const warm = at(started, 121, cooling(69))
    expect(warm.state.batches.b1?.offSale).toBeNull()
    const cold = at(warm, 300, cooling(40))
    expect(cold.state.batches.b1?.offSale).toBeNull()
    const warmed = at(warm, 200, cooling(80))
    expect(warmed.state.batches.b1?.offSale).toMatchObject({ why: 'cooling-missed' })
  })

  it('[B20] cooked food isn’t loaded cold before it is shown to have cooled, nor hot unreheated', () => {
    const load = (over: object): Given => ({
      type: 'load',
      pan: 'pan-chicken',
      amount: 900_000,
      batch: 'b1',
      ...over,
    })
    const cold = { heldBy: 'cold', ...read(40) } as const
    expect(refusalOf(whenAt(cooked, 5, load(cold)))).toMatchObject({
      problem: { code: 'not-cooled' },
    })
    const cooled = at(at(at(cooked, 2, cooling(140, stays)), 100, cooling(69)), 300, cooling(40))
    expect(codeOf(whenAt(cooled, 301, load(cold)))).toBeNull()
    expect(refusalOf(whenAt(cooled, 301, load(read(150))))).toMatchObject({
      problem: { code: 'not-reheated' },
    })
    const heat = (place: 'range' | 'hot-well', degrees: number): Given => ({
      type: 'recordReheating',
      batch: 'b1',
      place,
      startedAt: minute(301),
      reading: { ...fahrenheit(degrees), heldSeconds: 15 },
      initials: 'KT',
    })
    expect(refusalOf(whenAt(cooled, 320, heat('hot-well', 166)))).toEqual({
      code: 'cannot-reheat',
      why: 'not-there',
    })
    const short = at(cooled, 320, heat('range', 150))
    expect(short.state.batches.b1?.reheat).toMatchObject({ ok: false, why: 'too-low' })
    expect(codeOf(whenAt(short, 321, load(read(150))))).toBe('cannot-load')
    const hot = at(short, 325, heat('range', 166))
    expect(codeOf(whenAt(hot, 326, load(read(150))))).toBeNull()
  })

  const heat = { ...fahrenheit(168, { at: minute(-1180) }), heldSeconds: 5 }
  const yesterday = at(
    openedService(),
    1,
    { type: 'startBatch', component: 'chicken', loads: 1, startedAt: minute(-1200) },
    { type: 'recordCooking', batch: 'b1', reading: heat, initials: 'KT' },
    { type: 'finishBatch', batch: 'b1', amount: 1_000_000, finishedAt: minute(-1175) },
  )
  const told = (degrees: number, readAt: number) =>
    cooling(degrees, { ...read(degrees, { at: minute(readAt) }), ...stays })
  const cold: Given = {
    type: 'load',
    pan: 'pan-chicken',
    amount: 900_000,
    batch: 'b1',
    heldBy: 'cold',
    ...read(40),
  }

  it('[B29] that ended before is told, and judged by the moments that are told', () => {
    const first = at(yesterday, 2, told(140, -1170))
    expect(until(first, 30).state.batches.b1?.offSale).toBeNull()
    const second = at(first, 3, told(69, -1051))
    expect(refusalOf(whenAt(second, 4, cold))).toMatchObject({ problem: { code: 'not-cooled' } })
    expect(codeOf(whenAt(second, 4, { type: 'close' }))).toBe('still-cooling')
    const both = at(second, 5, told(40, -820))
    expect(until(both, 70).state.batches.b1?.offSale).toBeNull()
    expect(codeOf(whenAt(both, 6, cold))).toBeNull()
  })

  it('[B29] a stage that is told too late, too warm, or not within the hour is missed', () => {
    const first = at(yesterday, 2, told(140, -1170))
    const off = ({ state }: typeof first) => state.batches.b1?.offSale ?? null
    expect(off(at(first, 3, told(69, -1049)))).toMatchObject({ why: 'cooling-missed' })
    expect(off(at(first, 3, told(75, -1055), told(69, -1051)))).toBeNull()
    expect(off(at(first, 3, told(75, -1050), told(69, -1049)))).not.toBeNull()
    const second = at(first, 10, told(69, -1051))
    expect(off(at(second, 11, told(42, -811), told(41, -810)))).toBeNull()
    expect(off(at(second, 11, told(41, -809)))).toMatchObject({ why: 'cooling-missed' })
    expect(off(until(second, 69))).toBeNull()
    expect(off(until(second, 70))).toMatchObject({ why: 'cooling-missed' })
  })

  it('[B29] whose second stage runs on is missed at its moment', () => {
    const early = at(
      openedService(),
      1,
      { type: 'startBatch', component: 'chicken', loads: 1, startedAt: minute(-240) },
      {
        type: 'recordCooking',
        batch: 'b1',
        reading: { ...heat, at: minute(-200) },
        initials: 'KT',
      },
      { type: 'finishBatch', batch: 'b1', amount: 1_000_000, finishedAt: minute(-195) },
      told(140, -190),
      told(69, -75),
    )
    expect(until(early, 170).state.batches.b1?.offSale).toBeNull()
    expect(until(early, 171).state.batches.b1?.offSale).toMatchObject({ why: 'cooling-missed' })
  })

  it('[B22] a service isn’t closed while a batch cools', () => {
    const started = at(cooked, 2, cooling(140, stays))
    expect(refusalOf(whenAt(started, 3, { type: 'close' }))).toEqual({
      code: 'still-cooling',
      batch: 'b1',
    })
  })
})
