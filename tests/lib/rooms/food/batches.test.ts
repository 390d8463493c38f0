import { describe, expect, it } from 'vitest'
import { at, fahrenheit, minute, read, whenAt } from '#tests/support/food.ts'
import type { Given } from '#tests/support/service.ts'
import {
  changePan,
  choose,
  codeOf,
  eventsOf,
  given,
  load,
  ofPortions,
  onward,
  openedService,
  refusalOf,
  running,
  send,
} from '#tests/support/service.ts'

const chicken = (count: number) => ofPortions('chicken', count)
const start: Given = { type: 'startBatch', component: 'chicken', loads: 1, startedAt: minute(-40) }
const cooked = (degrees: number, over: Partial<ReturnType<typeof fahrenheit>> = {}): Given => ({
  type: 'recordCooking',
  batch: 'b1',
  reading: { ...fahrenheit(degrees), ...over, heldSeconds: 20 },
  initials: 'KT',
})
const finish = (over: Partial<Extract<Given, { type: 'finishBatch' }>> = {}): Given => ({
  type: 'finishBatch',
  batch: 'b1',
  amount: chicken(24),
  ...over,
})
const loadChicken = (over: Partial<Extract<Given, { type: 'load' }>> = {}): Given => ({
  type: 'load',
  pan: 'pan-chicken',
  amount: chicken(20),
  batch: 'b1',
  ...read(150),
  ...over,
})

describe('a batch', () => {
  it('[B1] is started, read, finished and loaded', () => {
    const told = at(openedService(), 1, start, cooked(167), finish(), loadChicken())
    expect(told.state.batches.b1).toMatchObject({
      component: 'chicken',
      loads: 1,
      startedAt: minute(-40),
      finishedAt: minute(1),
      cooked: true,
      amount: chicken(24),
      loaded: chicken(20),
    })
    expect(told.state.pans['pan-chicken']).toMatchObject({
      amount: chicken(20),
      batches: ['b1'],
      food: { heldBy: 'hot', clock: null, dateMark: null, finishedAt: minute(1), guarded: false },
      since: minute(1),
    })
    expect(told.state.nextBatch).toBe(2)
  })

  it('[B1] that was finished before it started, or ahead of now, is refused', () => {
    const told = at(openedService(), 1, start, cooked(167))
    expect(refusalOf(whenAt(told, 2, finish({ finishedAt: minute(-50) })))).toEqual({
      code: 'wrong-moment',
      problem: { code: 'finished-before-started', byMs: 10 * 60_000 },
    })
    expect(refusalOf(whenAt(told, 2, finish({ finishedAt: minute(9) })))).toMatchObject({
      code: 'wrong-moment',
      problem: { code: 'in-the-future' },
    })
    expect(codeOf(whenAt(told, 2, { ...start, startedAt: minute(9) }))).toBe('wrong-moment')
  })

  it('[B1] a clock that jumps back is told by what is recorded of it', () => {
    const told = at(openedService(), 5, start, cooked(140))
    expect(refusalOf(whenAt(told, 6, cooked(167, { at: minute(-41) })))).toMatchObject({
      code: 'wrong-moment',
      problem: { code: 'clock-back' },
    })
    expect(refusalOf(whenAt(told, 6, cooked(167, { at: minute(4) })))).toMatchObject({
      code: 'wrong-moment',
      problem: { code: 'clock-back', byMs: 60_000 },
    })
  })

  it('[B2] that fell short is recorded, and isn’t finished or loaded before it is read again', () => {
    const short = at(openedService(), 1, start, cooked(160))
    expect(short.state.batches.b1?.cooking).toHaveLength(1)
    expect(short.state.batches.b1?.cooked).toBe(false)
    const notCooked = {
      code: 'cannot-load',
      component: 'chicken',
      problem: { code: 'not-cooked', why: 'too-low' },
    }
    expect(refusalOf(whenAt(short, 2, finish()))).toEqual(notCooked)
    const finished = at(openedService(), 2, start, finish(), cooked(160))
    expect(refusalOf(whenAt(finished, 3, loadChicken()))).toEqual(notCooked)
    expect(codeOf(whenAt(at(finished, 4, cooked(166)), 5, loadChicken()))).toBeNull()
    expect(codeOf(whenAt(at(short, 4, cooked(166), finish()), 5, loadChicken()))).toBeNull()
  })

  it('[B2] nobody read is loaded nowhere, and neither is one that isn’t finished', () => {
    const unread = at(openedService(), 1, start, finish())
    expect(refusalOf(whenAt(unread, 2, loadChicken()))).toMatchObject({
      problem: { code: 'not-cooked', why: 'no-reading' },
    })
    const unfinished = at(openedService(), 1, start, cooked(167))
    expect(refusalOf(whenAt(unfinished, 2, loadChicken()))).toMatchObject({
      problem: { code: 'not-finished' },
    })
  })

  it('[B3] is asked for of what is cooked here, and is one of its own component', () => {
    const { batch: _, ...bare } = loadChicken() as Extract<Given, { type: 'load' }>
    const told = at(openedService(), 1, start, cooked(167), finish())
    expect(refusalOf(whenAt(told, 2, bare))).toEqual({ code: 'no-batch', component: 'chicken' })
    expect(codeOf(whenAt(told, 2, loadChicken({ batch: 'b7' })))).toBe('unknown batch')
    expect(
      refusalOf(whenAt(told, 2, { ...loadChicken(), pan: 'pan-rice', amount: 100_000 } as Given)),
    ).toEqual({ code: 'other-component', component: 'rice', batch: 'b1' })
    expect(refusalOf(whenAt(told, 2, loadChicken({ amount: chicken(25) })))).toEqual({
      code: 'more-than-batch',
      batch: 'b1',
      most: chicken(24),
    })
  })

  it('[B3] is not asked for of what is dry, nor is a reading', () => {
    const told = openedService()
    const almonds: Given = { type: 'load', pan: 'pan-almonds', amount: ofPortions('almonds', 20) }
    expect(codeOf(whenAt(told, 1, almonds))).toBeNull()
    expect(codeOf(whenAt(told, 1, { type: 'load', pan: 'pan-pita', amount: 24 }))).toBeNull()
    const cheddar = { ...load('pan-cheddar', ofPortions('cheddar', 9)) } as const
    const { reading: _, ...unread } = cheddar as Extract<Given, { type: 'load' }>
    expect(refusalOf(whenAt(told, 1, unread))).toMatchObject({
      problem: { code: 'no-load-reading' },
    })
    expect(codeOf(whenAt(told, 1, cheddar))).toBeNull()
  })

  it('[B4] that is older goes first, unless it is said that it stays behind', () => {
    const second: readonly Given[] = [
      { ...start, batch: 'second', startedAt: minute(-30) },
      { ...cooked(167), batch: 'second' } as Given,
      { ...finish({ finishedAt: minute(2) }), batch: 'second' } as Given,
    ]
    const told = at(at(openedService(), 1, start, cooked(167), finish()), 2, ...second)
    expect(refusalOf(whenAt(told, 3, loadChicken({ batch: 'second' })))).toEqual({
      code: 'older-batch-first',
      batch: 'b1',
    })
    expect(codeOf(whenAt(told, 3, loadChicken({ batch: 'second', notFirst: true })))).toBeNull()
    expect(codeOf(whenAt(told, 3, loadChicken()))).toBeNull()
  })

  it('[B1] that gave other than was told is corrected, never below what was loaded', () => {
    const told = at(openedService(), 1, start, cooked(167), finish(), loadChicken())
    expect(codeOf(whenAt(told, 2, finish({ amount: chicken(19) })))).toBe('absurd-amount')
    const more = at(told, 2, finish({ amount: chicken(30) }))
    expect(more.state.batches.b1).toMatchObject({ amount: chicken(30), finishedAt: minute(1) })
    expect(codeOf(whenAt(more, 3, finish({ amount: chicken(30) })))).toBe('already-so')
  })

  it('[B16] with a date goes until the midnight that ends its last day', () => {
    const told = at(
      openedService(),
      1,
      start,
      cooked(167),
      finish({ preparedOn: '2026-11-19' }),
      loadChicken(),
    )
    // Prepared on the 19th, day 1: the 25th is day 7, and ends at 06:00 UTC in Chicago.
    const endsAt = Date.parse('2026-11-26T06:00:00Z')
    expect(told.state.pans['pan-chicken']?.food?.dateMark).toEqual({
      lastDay: '2026-11-25',
      endsAt,
    })
    const old = at(openedService(), 1, start, cooked(167), finish({ preparedOn: '2026-11-18' }))
    expect(refusalOf(whenAt(old, 2, loadChicken()))).toMatchObject({
      problem: { code: 'past-date-mark', lastDay: '2026-11-24' },
    })
  })
})

describe('a reading at a load', () => {
  const told = at(openedService(), 1, start, cooked(167), finish())

  it('[B5] is in limits, or the pan stays empty', () => {
    expect(refusalOf(whenAt(told, 2, loadChicken(read(134))))).toMatchObject({
      problem: { code: 'load-out-of-limits' },
    })
    expect(codeOf(whenAt(told, 2, loadChicken(read(135))))).toBeNull()
    const { reading: _, initials: __, ...bare } = loadChicken() as Extract<Given, { type: 'load' }>
    expect(refusalOf(whenAt(told, 2, bare))).toMatchObject({ problem: { code: 'no-load-reading' } })
    expect(refusalOf(whenAt(told, 40, loadChicken(read(150, { at: minute(2) }))))).toMatchObject({
      problem: { code: 'no-load-reading' },
    })
  })

  it.each([
    ['no initials', { initials: undefined }, 'not-initialled'],
    ['no probe', { reading: { ...fahrenheit(150), probe: ' ' } }, 'no-probe'],
    ['the surface only', { reading: { ...fahrenheit(150), where: 'surface' } }, 'surface-only'],
  ] as const)('[B5] with %s doesn’t count', (_, over, lack) => {
    expect(refusalOf(whenAt(told, 2, loadChicken(over)))).toEqual({ code: 'reading-lacks', lack })
  })

  it('[B6] on the other scale is asked about: did you mean °F?', () => {
    const celsius = { ...fahrenheit(165), scale: 'C' } as const
    expect(refusalOf(whenAt(told, 2, loadChicken({ reading: celsius })))).toEqual({
      code: 'reading-asked',
      question: { code: 'did-you-mean', scale: 'F', must: true },
      read: { tenths: 1650, scale: 'C' },
    })
    const sure = loadChicken({ reading: { ...celsius, scaleConfirmed: true } })
    expect(codeOf(whenAt(told, 2, sure))).toBe('reading-asked')
    const sixtySix = { ...fahrenheit(66), scale: 'F' } as const
    expect(refusalOf(whenAt(told, 2, loadChicken({ reading: sixtySix })))).toMatchObject({
      question: { code: 'did-you-mean', scale: 'C', must: false },
    })
    const meant = loadChicken({ reading: { ...sixtySix, scaleConfirmed: true } })
    expect(refusalOf(whenAt(told, 2, meant))).toMatchObject({
      code: 'cannot-load',
      problem: { code: 'load-out-of-limits' },
    })
  })

  it('[B24] says in the event that there were initials, not whose', () => {
    const events = eventsOf(whenAt(told, 2, loadChicken()))
    expect(events[0]).toMatchObject({ reading: { initialled: true, at: minute(2) } })
    expect(JSON.stringify(events)).not.toContain('KT')
  })
})

describe('a pan on the scale', () => {
  const told = at(openedService(), 1, start, cooked(167), finish())
  const tare = 760_000

  it('[B7] holds gross minus tare', () => {
    const { amount: _, ...bare } = loadChicken() as Extract<Given, { type: 'load' }>
    const weighed = { ...bare, weighedMg: tare + chicken(18) }
    expect(eventsOf(whenAt(told, 2, weighed))).toMatchObject([
      { type: 'panLoaded', amount: chicken(18) },
    ])
    expect(refusalOf(whenAt(told, 2, { ...bare, weighedMg: tare - 1 }))).toEqual({
      code: 'wrong-amount',
      pan: 'pan-chicken',
      problem: { code: 'below-tare', tareMg: tare },
    })
    expect(refusalOf(whenAt(told, 2, { ...bare, weighedMg: tare + 9_000_000 }))).toMatchObject({
      code: 'wrong-amount',
      problem: { code: 'overfull' },
    })
    expect(codeOf(whenAt(told, 2, { ...bare, weighedMg: tare }))).toBe('absurd-amount')
    expect(codeOf(whenAt(told, 2, { ...weighed, amount: 1 }))).toBe('reading-unclear')
    expect(refusalOf(whenAt(told, 2, bare))).toMatchObject({ problem: { code: 'no-amount' } })
  })

  it('[B7] of what is counted in pieces isn’t weighed', () => {
    expect(codeOf(whenAt(told, 2, { type: 'load', pan: 'pan-pita', weighedMg: 2_000_000 }))).toBe(
      'not-by-weight',
    )
  })

  it('[F37] more than the pan usably holds is refused, however it is said', () => {
    // Third-size, 4 in: 125 fl oz usable of 140 g a cup of 8 fl oz.
    const most = Math.floor((125 / 8) * 140 * 1000)
    const full = at(told, 2, { ...finish({ amount: 9_000_000 }) })
    expect(refusalOf(whenAt(full, 3, loadChicken({ amount: most + 1_000 })))).toMatchObject({
      code: 'wrong-amount',
      problem: { code: 'overfull' },
    })
    expect(codeOf(whenAt(full, 3, loadChicken({ amount: most - 1_000 })))).toBeNull()
  })
})

describe('topping up', () => {
  it('[B11] adds food to food: batches of both, and what was loaded', () => {
    const told = given({ type: 'correct', pan: 'pan-chicken', amount: chicken(5) })
    const { type: _, ...fields } = load('pan-chicken', chicken(4)) as Extract<
      Given,
      { type: 'load' }
    >
    const topped = onward(told, { type: 'topUp', ...fields })
    expect(topped.state.pans['pan-chicken']).toMatchObject({
      amount: chicken(9),
      load: 1,
      batches: ['opening-chicken'],
    })
    expect(topped.state.accounts.chicken?.loaded).toBe(chicken(28))
    expect(codeOf(whenAt(told, 9, { type: 'topUp', ...fields, reading: fahrenheit(120) }))).toBe(
      'cannot-load',
    )
    const empty = onward(told, { type: 'correct', pan: 'pan-chicken', amount: 0 })
    expect(codeOf(whenAt(empty, 9, { type: 'topUp', ...fields }))).toBe('nothing-there')
    expect(refusalOf(whenAt(given(), 9, { type: 'topUp', ...fields, amount: 1_400_000 }))).toEqual(
      expect.objectContaining({ code: 'wrong-amount' }),
    )
  })
})

describe('a load past its throw-out time', () => {
  it('[F20] is refused', () => {
    const timed: Given = {
      type: 'startTimeClock',
      what: 'batch',
      id: 'b1',
      leftAt: minute(1),
      from: 'hot',
      rule: '4h',
      ...read(150),
    }
    const told = at(openedService(), 1, start, cooked(167), finish(), timed)
    const onTime = loadChicken({ heldBy: 'time' })
    expect(codeOf(whenAt(told, 200, onTime))).toBeNull()
    expect(codeOf(whenAt(told, 2, loadChicken()))).toBe('cannot-load')
    expect(refusalOf(whenAt(told, 241, onTime))).toMatchObject({
      code: 'cannot-load',
      problem: { code: 'past-throw-out', at: minute(241) },
    })
    expect(running(told).batches.b1?.clock?.throwOutAt).toBe(minute(241))
  })
})

describe('what is loaded', () => {
  it('[B3] is sold', () => {
    const told = given(changePan('pan-chicken', chicken(1)), send(choose('garden-chicken')))
    expect(codeOf(whenAt(told, 9, send(choose('garden-chicken'))))).toBe('sold-out')
  })
})
