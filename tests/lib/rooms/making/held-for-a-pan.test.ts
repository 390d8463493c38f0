import { describe, expect, it } from 'vitest'
import { sayWhyHeld } from '#lib/rooms/care/words/held-en.ts'
import { stoppedBuilds } from '#lib/rooms/making/views/assembly-stop.ts'
import { handOverView } from '#lib/rooms/shelf/views/hand-over.ts'
import { handOverEn } from '#lib/rooms/shelf/words/hand-over-en.ts'
import { at, fahrenheit, minute, read, whenAt } from '#tests/support/food.ts'
import {
  accountOf,
  buildIn,
  change,
  choose,
  codeOf,
  eventsOf,
  type Given,
  given,
  at as of,
  ofPortions,
  refusalOf,
  running,
  send,
} from '#tests/support/service.ts'

const on = (name: string, type: 'start' | 'finish' | 'handOver'): Given => ({ type, ...of(name) })
const readPan = (id: string, degrees: number): Given => ({
  type: 'readTemperature',
  what: 'pan',
  id,
  ...read(degrees),
})
const low = readPan('pan-chicken', 128)
const resolve = (
  way: 'discard' | 'reheat' | 'time-only',
  over: Partial<Extract<Given, { type: 'resolveOffSale' }>> = {},
): Given => ({ type: 'resolveOffSale', what: 'pan', id: 'pan-chicken', way, ...over })
const heat = {
  place: 'range',
  startedAt: minute(31),
  initials: 'KT',
  reading: { ...fahrenheit(166, { at: minute(40) }), heldSeconds: 15 },
} as const
const throwOut = (what: 'pan' | 'build', id: string): Given => ({
  type: 'throwOut',
  what,
  id,
  reason: 'out-of-limits',
  initials: 'KT',
})

/** 1A made before a reading in limits at 10:10, 2A made after it, 3A being made; 4A has no chicken. */
const busy = at(
  at(
    at(
      at(given(), 6, ...Array.from({ length: 3 }, () => send(choose('garden-chicken')))),
      7,
      send(choose('harbor-tuna')),
      on('1A', 'start'),
      on('1A', 'finish'),
    ),
    10,
    readPan('pan-chicken', 150),
  ),
  20,
  on('2A', 'start'),
  on('2A', 'finish'),
  on('4A', 'start'),
  on('3A', 'start'),
)
const lastGoodAt = busy.state.pans['pan-chicken']?.readings.at(-1)?.at ?? 0
const out = at(busy, 30, low)

describe('a pan that is read out of limits', () => {
  it('[B31] holds no longer what its guest changed meanwhile, once it is found good', () => {
    const noCheddar = choose('garden-chicken', { cheddar: 'no' })
    const changed = at(out, 31, change('3A', noCheddar))
    expect(buildIn(changed, '3A')).toMatchObject({
      hold: { reason: 'off-sale', pans: ['pan-chicken'] },
      stop: { to: { choice: noCheddar } },
    })
    const good = at(changed, 40, resolve('reheat', heat))
    expect(buildIn(good, '3A')).toMatchObject({ hold: null, stop: { to: { choice: noCheddar } } })
  })

  it('[B31] holds what is made of it and what was since it was last good, and nothing else', () => {
    expect(eventsOf(whenAt(busy, 30, low)).filter(({ type }) => type === 'buildHeld')).toEqual([
      { type: 'buildHeld', ticket: 3, letter: 'A', reason: 'off-sale', pan: 'pan-chicken' },
      { type: 'buildHeld', ticket: 2, letter: 'A', reason: 'off-sale', pan: 'pan-chicken' },
    ])
    expect(buildIn(out, '1A')).toMatchObject({ state: 'made', hold: null })
    expect(buildIn(out, '4A')).toMatchObject({ state: 'making', hold: null, stop: null })
    expect(refusalOf(whenAt(out, 31, on('2A', 'handOver')))).toEqual({
      code: 'build-held',
      build: '2A',
      reason: 'off-sale',
    })
    expect(codeOf(whenAt(out, 31, on('3A', 'finish')))).toBe('build-held')
    expect(codeOf(whenAt(out, 31, on('1A', 'handOver')))).toBeNull()
    expect(codeOf(whenAt(out, 31, on('4A', 'finish')))).toBeNull()
  })

  it('[B31] holds them though another pan could fill them', () => {
    const { state } = busy
    const pan = state.pans['pan-chicken']
    if (!pan || !state.station) throw new Error('no chicken')
    const [first, ...others] = state.station.line.wells
    if (!first) throw new Error('no well')
    const place = state.station.line.wells.flatMap((well) => well.pans)
    const second = place.find(({ id }) => id === 'pan-chicken')
    if (!second) throw new Error('no chicken')
    const two = {
      ...busy,
      state: {
        ...state,
        station: {
          ...state.station,
          line: {
            ...state.station.line,
            wells: [
              { ...first, pans: [...first.pans, { ...second, id: 'pan-chicken-2' }] },
              ...others,
            ],
          },
        },
        pans: { ...state.pans, 'pan-chicken-2': pan },
      },
    }
    const told = at(two, 30, low)
    expect(buildIn(told, '3A').stop).toMatchObject({ reason: 'off-sale', to: null })
    expect(codeOf(whenAt(told, 31, on('3A', 'finish')))).toBe('build-held')
    const other = at(two, 30, readPan('pan-chicken-2', 128))
    // Nobody knows out of which of the two it was scooped, whatever the counts say.
    expect(buildIn(other, '2A').hold).toMatchObject({ pans: ['pan-chicken-2'] })
    expect(buildIn(other, '1A').hold).toBeNull()
    expect(buildIn(other, '3A').hold).toMatchObject({ pans: ['pan-chicken-2'] })
  })

  it('[B31] of what was finished at the very moment of a good reading nobody knows which came first', () => {
    const making = at(given(), 6, send(choose('garden-chicken')), on('1A', 'start'))
    const told = at(making, 10, on('1A', 'finish'), readPan('pan-chicken', 150))
    expect(buildIn(told, '1A').since).toBe(minute(10))
    expect(told.state.pans['pan-chicken']?.readings.at(-1)?.at).toBe(minute(10))
    expect(buildIn(at(told, 30, low), '1A').hold).toMatchObject({ pans: ['pan-chicken'] })
    const before = at(at(making, 9, on('1A', 'finish')), 10, readPan('pan-chicken', 150))
    expect(buildIn(at(before, 30, low), '1A').hold).toBeNull()
  })

  it('[B31] without a reading since its load holds all that was taken since', () => {
    const cold = at(given(), 8, send(choose('harbor-tuna')), on('1A', 'start'), on('1A', 'finish'))
    expect(buildIn(at(cold, 30, readPan('pan-tuna', 50)), '1A').hold?.reason).toBe('off-sale')
  })

  it('[B31] found good lets them go on, no longer than the code lets such food stand', () => {
    const heated = at(out, 41, resolve('reheat', heat))
    expect(buildIn(heated, '3A')).toMatchObject({ state: 'making', hold: null, stop: null })
    expect(codeOf(whenAt(heated, 42, on('3A', 'finish')))).toBeNull()
    const made = buildIn(heated, '2A')
    expect(made).toMatchObject({ state: 'made', hold: null, stop: null })
    expect(made.until?.throwOutAt).toBe(lastGoodAt + 4 * 3_600_000)
    expect(codeOf(whenAt(heated, 42, on('2A', 'handOver')))).toBeNull()
    const timed = at(out, 31, resolve('time-only'))
    expect(buildIn(timed, '2A')).toMatchObject({
      hold: null,
      until: { throwOutAt: lastGoodAt + 4 * 3_600_000 },
    })
  })

  it('[B31] held for two pans waits for both', () => {
    const slaw = at(out, 30, readPan('pan-slaw', 60))
    expect(buildIn(slaw, '2A').hold?.pans).toEqual(['pan-chicken', 'pan-slaw'])
    const heated = at(slaw, 41, resolve('reheat', heat))
    expect(buildIn(heated, '2A').hold).toMatchObject({ reason: 'off-sale', pans: ['pan-slaw'] })
    expect(codeOf(whenAt(heated, 42, on('2A', 'handOver')))).toBe('build-held')
    const both = at(heated, 42, resolve('time-only', { id: 'pan-slaw' }))
    expect(buildIn(both, '2A')).toMatchObject({ hold: null, stop: null })
  })

  it('[B32] thrown out takes what was made of it along: initialled, and made again', () => {
    const gone = at(out, 31, resolve('discard'))
    expect(Object.keys(gone.state.toThrowOut).sort()).toEqual(['build/2A', 'pan/pan-chicken'])
    expect(buildIn(gone, '3A')).toMatchObject({ hold: null, stop: { reason: 'throw-out' } })
    expect(buildIn(gone, '2A')).toMatchObject({ state: 'made', hold: null, stop: null })
    expect(refusalOf(whenAt(gone, 32, on('2A', 'handOver')))).toEqual({
      code: 'past-throw-out',
      id: '2A',
    })
    const again = at(gone, 33, throwOut('build', '2A'))
    expect(buildIn(again, '2A')).toMatchObject({ state: 'waiting', remakes: 1 })
    expect(again.state.wastes.chicken).toEqual({ 'out-of-limits': ofPortions('chicken', 1) })
    expect(codeOf(whenAt(gone, 33, { type: 'cancel', ...of('2A') }))).toBeNull()
    const early = at(out, 31, throwOut('pan', 'pan-chicken'))
    expect(early.state.toThrowOut['build/2A']).toMatchObject({ because: 'out-of-limits' })
    expect(buildIn(early, '3A').stop?.reason).toBe('throw-out')
  })

  it('[B32] what is held may be thrown out before anybody decides, and is made again', () => {
    const thrown = at(
      out,
      31,
      { type: 'acknowledge', ...of('2A'), foodInIt: true },
      { type: 'acknowledge', ...of('3A'), foodInIt: false },
    )
    for (const name of ['2A', '3A'])
      expect(buildIn(thrown, name)).toMatchObject({ state: 'waiting', hold: null, stop: null })
    expect(accountOf(thrown, 'chicken').wasted).toBe(ofPortions('chicken', 1))
  })

  it('[B31] a change of what is held for a pan waits for the answer like any other', () => {
    expect(codeOf(whenAt(out, 31, { type: 'cancel', ...of('2A') }))).toBeNull()
    const stopped = at(out, 31, { type: 'cancel', ...of('3A') })
    const heated = at(stopped, 41, resolve('reheat', heat))
    expect(buildIn(heated, '3A').stop).toMatchObject({ reason: 'cancel' })
  })

  it('[B31] a need that is told of one that is held holds it for good', () => {
    const milk = { code: 'milk', handling: 'keep-apart', reason: null } as const
    const told = at(out, 31, { type: 'tellNeed', ...of('2A'), asked: 'needs', needs: [milk] })
    expect(buildIn(told, '2A').hold).toMatchObject({ reason: 'need' })
    const heated = at(told, 41, resolve('reheat', heat))
    expect(buildIn(heated, '2A').hold).toMatchObject({ reason: 'need' })
    const gone = at(told, 41, resolve('discard'))
    expect(gone.state.toThrowOut['build/2A']).toBeUndefined()
  })

  it('[B31] a label that changes holds for its guest what is held for a pan', () => {
    const milk = { code: 'milk', handling: 'leave-out', reason: 'allergy' } as const
    const apart = choose(
      'garden-chicken',
      { cheddar: 'no', 'yogurt-sauce': 'no', almonds: 'no' },
      { asked: 'needs', needs: [milk] },
    )
    const making = at(given(), 6, send(apart), on('1A', 'start'))
    const held = at(making, 30, low)
    expect(buildIn(held, '1A').hold?.reason).toBe('off-sale')
    const chicken = running(held).station.components.find(({ id }) => id === 'chicken')
    const ingredient = chicken?.ingredients[0] ?? ''
    const other = at(held, 31, { type: 'notSameProduct', ingredient })
    expect(buildIn(other, '1A').hold?.reason).toBe('label')
    expect(buildIn(at(other, 41, resolve('reheat', heat)), '1A').hold?.reason).toBe('label')
  })
})

describe('food on time alone that is read too warm', () => {
  it('[B32] takes what was made of it since its last good reading along', () => {
    const timed = at(given(), 12, {
      type: 'startTimeClock',
      what: 'pan',
      id: 'pan-tuna',
      leftAt: minute(10),
      from: 'cold',
      rule: '6h',
      ...read(40, { at: minute(9) }),
    })
    const made = at(timed, 20, send(choose('harbor-tuna')), on('1A', 'start'), on('1A', 'finish'))
    const warm = at(made, 30, readPan('pan-tuna', 71))
    expect(warm.state.toThrowOut['build/1A']).toMatchObject({ because: 'too-warm' })
    expect(codeOf(whenAt(warm, 31, on('1A', 'handOver')))).toBe('past-throw-out')
    const good = at(at(made, 25, readPan('pan-tuna', 60)), 30, readPan('pan-tuna', 71))
    expect(good.state.toThrowOut['build/1A']).toBeUndefined()
  })
})

describe('the screens', () => {
  it('[A24] Assembly stops what is being made and says which food and who decides; not what is made', () => {
    const [stopped, ...others] = stoppedBuilds(running(out))
    expect(others).toEqual([])
    expect(stopped).toMatchObject({ name: '3A', held: { reason: 'off-sale' }, throwOut: null })
    expect(stopped?.held && sayWhyHeld(stopped.held)).toBe(
      'Herb chicken: out of its limits, don’t serve.',
    )
  })

  it('[H14] Hand-over keeps what is held apart, and says when it is to be thrown out', () => {
    const view = handOverView(running(out), minute(31))
    expect(view.held).toMatchObject([{ name: '2A', why: { reason: 'off-sale' } }])
    expect(view.shelf.map(({ name }) => name)).toEqual(['1A'])
    const gone = handOverView(running(at(out, 31, resolve('discard'))), minute(32))
    expect(gone.held).toEqual([])
    expect(gone.toThrowOut).toMatchObject([
      { name: '2A', because: 'out-of-limits', since: minute(31) },
    ])
    expect(handOverEn.outSince('10:31')).toBe('what it took is thrown out, since 10:31')
  })
})
