import { describe, expect, it } from 'vitest'
import { levelOf, levelsOf, sellable } from '#lib/rooms/pans/facts/levels.ts'
import { shortBuilds } from '#lib/rooms/pans/facts/short.ts'
import { nextDue } from '#lib/spine/due.ts'
import { at, fahrenheit, minute, read, until, whenAt } from '#tests/support/food.ts'
import {
  accountOf,
  buildIn,
  changePan,
  choose,
  codeOf,
  eventsOf,
  type Given,
  given,
  inPan,
  load,
  at as of,
  ofPortions,
  refusalOf,
  running,
  send,
  type Told,
} from '#tests/support/service.ts'

const readPan = (id: string, degrees: number, over = {}): Given => ({
  type: 'readTemperature',
  what: 'pan',
  id,
  ...read(degrees, over),
})
const on1A = (type: 'start' | 'finish' | 'handOver'): Given => ({ type, ...of('1A') })
const resolve = (
  way: 'discard' | 'reheat' | 'time-only',
  over: Partial<Extract<Given, { type: 'resolveOffSale' }>> = {},
): Given => ({ type: 'resolveOffSale', what: 'pan', id: 'pan-chicken', way, ...over })
const inCharge = { by: 'in-charge' } as const
const offSale = ({ state }: Told, pan = 'pan-chicken') => state.pans[pan]?.offSale ?? null
const left = (told: Told, component: string) =>
  sellable(running(told), levelsOf(running(told)), component)

/** Loaded in the first minutes after the opening. */
const loaded = given()
const loadedAt = loaded.state.pans['pan-chicken']?.since ?? 0
const sent = at(loaded, 6, send(choose('garden-chicken')))

describe('a reading of a pan', () => {
  it('[B12] in limits is recorded, and the next is counted from it', () => {
    const told = at(loaded, 30, readPan('pan-chicken', 140))
    expect(told.state.pans['pan-chicken']?.readings).toHaveLength(2)
    expect(offSale(told)).toBeNull()
  })

  it('[B12] out of limits is recorded and takes the pan off sale in the same append', () => {
    const events = eventsOf(whenAt(sent, 30, readPan('pan-chicken', 128)))
    expect(events).toMatchObject([
      { type: 'temperatureRead', id: 'pan-chicken', inLimits: false },
      { type: 'takenOffSale', id: 'pan-chicken', why: 'out-of-limits', lastGoodAt: loadedAt },
    ])
    const told = at(sent, 30, readPan('pan-chicken', 128))
    expect(left(told, 'chicken')).toBe(0)
    expect(levelOf(running(told), 'chicken')).toMatchObject({
      inPan: 0,
      heldBack: ofPortions('chicken', 24),
    })
    expect(inPan(told, 'pan-chicken')).toBe(ofPortions('chicken', 24))
    expect(refusalOf(whenAt(told, 31, send(choose('garden-chicken'))))).toEqual({
      code: 'off-sale',
      component: 'chicken',
    })
    expect(refusalOf(whenAt(told, 31, on1A('start')))).toEqual({
      code: 'off-sale',
      component: 'chicken',
    })
    expect([...shortBuilds(running(told)).keys()]).toEqual(['1A'])
  })

  it('[B12] lets what is being made of it wait, and a better reading changes nothing', () => {
    const told = at(at(sent, 20, on1A('start')), 30, readPan('pan-chicken', 128))
    expect(refusalOf(whenAt(told, 31, on1A('finish')))).toEqual({
      code: 'build-held',
      build: '1A',
      reason: 'off-sale',
    })
    const better = at(told, 32, readPan('pan-chicken', 150))
    expect(offSale(better)).toMatchObject({ why: 'out-of-limits', lastGoodAt: loadedAt })
    expect(codeOf(whenAt(better, 33, on1A('finish')))).toBe('build-held')
  })

  it('[B6] in °C of a soup is asked about', () => {
    const soup = { ...fahrenheit(165), scale: 'C' } as const
    expect(
      refusalOf(whenAt(loaded, 30, { ...readPan('pan-chicken', 0), reading: soup } as Given)),
    ).toMatchObject({ code: 'reading-asked', question: { code: 'did-you-mean', scale: 'F' } })
  })

  it('[B1] before the one that is recorded is a clock that jumped back', () => {
    const told = at(loaded, 30, readPan('pan-chicken', 140))
    const before = readPan('pan-chicken', 140, { at: minute(29) })
    expect(refusalOf(whenAt(told, 31, before))).toMatchObject({
      code: 'wrong-moment',
      problem: { code: 'clock-back', byMs: 60_000 },
    })
  })

  it('[B12] of what isn’t there is refused', () => {
    expect(codeOf(whenAt(loaded, 9, readPan('pan-kale', 140)))).toBe('unknown pan')
    const empty = at(loaded, 9, { type: 'correct', pan: 'pan-chicken', amount: 0 })
    expect(codeOf(whenAt(empty, 10, readPan('pan-chicken', 140)))).toBe('nothing-there')
    const backup: Given = { ...readPan('back-up-kale', 140), what: 'backup' } as Given
    expect(codeOf(whenAt(loaded, 9, backup))).toBe('unknown backup')
  })
})

describe('a pan that is off sale', () => {
  const out = at(sent, 30, readPan('pan-chicken', 128))

  it('[B12] is resolved by the person in charge only, and only while it is off sale', () => {
    expect(codeOf(whenAt(out, 31, resolve('discard')))).toBe('not-in-charge')
    expect(codeOf(whenAt(sent, 31, resolve('discard'), inCharge))).toBe('already-so')
  })

  it('[B13] goes on time alone since it was last good, or is reheated on the range', () => {
    const timed = at(out, 31, resolve('time-only'))
    expect(timed.state.pans['pan-chicken']).toMatchObject({
      offSale: null,
      food: {
        heldBy: 'time',
        clock: { rule: '4h', startedAt: loadedAt, throwOutAt: loadedAt + 4 * 3_600_000 },
      },
    })
    expect(left(timed, 'chicken')).toBe(23)
    const heat = {
      place: 'range',
      startedAt: minute(31),
      initials: 'KT',
      reading: { ...fahrenheit(166, { at: minute(40) }), heldSeconds: 15 },
    } as const
    const heated = at(out, 41, resolve('reheat', heat))
    expect(heated.state.pans['pan-chicken']).toMatchObject({
      offSale: null,
      since: minute(40),
      food: { heldBy: 'hot' },
    })
    expect(
      refusalOf(whenAt(out, 41, resolve('reheat', { ...heat, place: 'oven' }), inCharge)),
    ).toEqual({ code: 'cannot-reheat', why: 'not-there' })
    const low = { ...heat, reading: { ...heat.reading, tenths: 1600 } }
    expect(refusalOf(whenAt(out, 41, resolve('reheat', low), inCharge))).toEqual({
      code: 'cannot-reheat',
      why: 'too-low',
    })
  })

  it('[B13] goes no other way than the code allows', () => {
    const cold = at(sent, 30, readPan('pan-tuna', 48))
    expect(refusalOf(whenAt(cold, 31, resolve('reheat', { id: 'pan-tuna' }), inCharge))).toEqual({
      code: 'way-not-allowed',
      ways: ['time-only', 'discard'],
    })
    const late = at(sent, 30, readPan('pan-chicken', 128))
    expect(refusalOf(whenAt(late, 200, resolve('reheat'), inCharge))).toMatchObject({
      code: 'way-not-allowed',
      ways: ['time-only', 'discard'],
    })
    expect(refusalOf(whenAt(late, 250, resolve('time-only'), inCharge))).toMatchObject({
      code: 'way-not-allowed',
      ways: ['discard'],
    })
  })

  it('[B13][B16] that is discarded is to be thrown out, and what is being made of it stops', () => {
    const making = at(at(sent, 20, on1A('start')), 30, readPan('pan-chicken', 128))
    const told = at(making, 31, resolve('discard'))
    expect(told.state.toThrowOut).toMatchObject({
      'pan/pan-chicken': { because: 'out-of-limits' },
    })
    expect(buildIn(told, '1A').stop).toMatchObject({ reason: 'throw-out', to: null })
    const acknowledged = at(told, 32, { type: 'acknowledge', ...of('1A'), foodInIt: true })
    expect(buildIn(acknowledged, '1A')).toMatchObject({ state: 'waiting', stop: null, remakes: 1 })
    expect(accountOf(acknowledged, 'chicken').wasted).toBe(ofPortions('chicken', 1))
  })

  it('[B12] is not changed for another before it was thrown out with initials', () => {
    const change = changePan('pan-chicken', ofPortions('chicken', 9))
    expect(codeOf(whenAt(out, 31, change))).toBe('throw-out-first')
    const thrown: Given = {
      type: 'throwOut',
      what: 'pan',
      id: 'pan-chicken',
      reason: 'out-of-limits',
      initials: 'KT',
    }
    const { initials: _, ...bare } = thrown
    expect(codeOf(whenAt(out, 31, bare as Given))).toBe('not-initialled')
    const again = at(out, 31, thrown, load('pan-chicken', ofPortions('chicken', 9)))
    expect(left(again, 'chicken')).toBe(8)
    expect(accountOf(again, 'chicken').wasted).toBe(ofPortions('chicken', 24))
  })
})

describe('a reading that nobody takes', () => {
  it('[B14] is missed at its moment, ahead of the rush it would fall into, and takes the pan off sale', () => {
    // Loaded before 10:05; two hours later is in the rush of 11:42, so it is due at 11:42.
    const dueAt = minute(102)
    const batches = until(loaded, 101.9)
    expect(nextDue(batches.state)).toBe(dueAt)
    expect(offSale(batches)).toBeNull()
    const missed = until(loaded, 102)
    expect(offSale(missed)).toMatchObject({ why: 'reading-missed', lastGoodAt: loadedAt })
    const fallen = missed.events.filter((one) => 'what' in one && one.what === 'pan')
    expect(fallen.filter((one) => one.due !== undefined)).toMatchObject(
      ['pan-rice', 'pan-chicken'].map((id) => ({
        type: 'readingMissed',
        id,
        due: dueAt,
        command: null,
      })),
    )
    expect(left(missed, 'chicken')).toBe(0)
    expect(left(missed, 'almonds')).toBeGreaterThan(0)
  })

  it('[B14] is lifted by a reading in limits, not by one that comes after 4 hours', () => {
    const missed = until(loaded, 102)
    const lifted = at(missed, 110, readPan('pan-chicken', 139))
    expect(offSale(lifted)).toBeNull()
    expect(left(lifted, 'chicken')).toBe(24)
    const late = at(missed, 260, readPan('pan-chicken', 139))
    expect(offSale(late)).toMatchObject({ why: 'reading-missed' })
    const low = at(missed, 110, readPan('pan-chicken', 129))
    expect(offSale(low)).toMatchObject({ why: 'out-of-limits', lastGoodAt: loadedAt })
  })

  it('[B14] told late lifts what was read in time, while the next isn’t missed by then', () => {
    const missed = until(loaded, 102)
    const told = (minutes: number, readAt: number) =>
      offSale(at(missed, minutes, readPan('pan-chicken', 139, { at: minute(readAt) })))
    expect(told(110, 101)).toBeNull()
    expect(told(230, 140)).toBeNull()
    expect(told(230, 101)).toMatchObject({ why: 'reading-missed' })
    expect(told(260, 150)).toMatchObject({ why: 'reading-missed' })
    const late = at(missed, 260, readPan('pan-chicken', 139))
    expect(offSale(at(late, 261, readPan('pan-chicken', 139)))).not.toBeNull()
  })

  it('[B23] nothing falls due while a jump of the clock isn’t confirmed', () => {
    const jumped = { type: 'clockJumped', byMs: 90_000 } as const
    const told: Told = {
      ...loaded,
      state: { ...loaded.state, clockJump: { byMs: 90_000, at: 0, read: {} } },
    }
    expect(jumped.byMs).toBe(90_000)
    expect(nextDue(told.state)).toBeNull()
    expect(until(told, 300).events).toHaveLength(loaded.events.length)
  })
})
