import { describe, expect, it } from 'vitest'
import { mostInPan } from '#lib/rooms/pans/facts/capacity.ts'
import {
  accountOf,
  at,
  changePan as changeOf,
  choose,
  codeOf,
  cookedService,
  eventsOf,
  type Given,
  given,
  inPan,
  load as loadOf,
  OPENED_AT,
  ofPortions,
  onward,
  openedService,
  refusalOf,
  running,
  send,
  when,
} from '#tests/support/service.ts'

const beans = (count: number) => ofPortions('beans', count)
const load = (amount: number): Given => loadOf('pan-beans', amount)
const changePan = (amount: number): Given => changeOf('pan-beans', amount)
const correct = (amount: number): Given => ({ type: 'correct', pan: 'pan-beans', amount })

describe('an empty pan', () => {
  it('[K1] is loaded', () => {
    const loaded = onward(cookedService(), load(beans(24)))
    expect(loaded.state.pans['pan-beans']).toMatchObject({
      amount: beans(24),
      full: beans(24),
      load: 1,
      counted: 0,
      loadedAt: OPENED_AT + (loaded.events.length - 1) * 10_000,
      soiledBy: [],
      batches: ['opening-beans'],
      food: { heldBy: 'hot', clock: null, dateMark: null, guarded: false },
      offSale: null,
    })
    expect(accountOf(loaded, 'beans').loaded).toBe(beans(24))
  })

  it('[K2] may be changed as well', () => {
    expect(eventsOf(when(cookedService(), changePan(beans(24))))).toMatchObject([
      { type: 'panChanged', pan: 'pan-beans', takenAway: 0, amount: beans(24) },
    ])
  })
})

describe('a pan with food in it', () => {
  it('[K1] is not loaded: food is not added to food', () => {
    expect(refusalOf(when(given(), load(beans(24))))).toEqual({
      code: 'pan-not-empty',
      pan: 'pan-beans',
    })
  })

  it('[K2] is changed: what it held goes away with it', () => {
    const changed = onward(given(), changePan(beans(10)))
    expect(changed.state.pans['pan-beans']).toMatchObject({
      amount: beans(10),
      full: beans(10),
      load: 2,
    })
    expect(accountOf(changed, 'beans')).toMatchObject({ loaded: beans(34), takenAway: beans(24) })
  })

  it('[K3] is counted: what is in it is set right, up or down, and nothing is loaded', () => {
    const down = onward(given(), correct(beans(10)))
    expect(down.state.pans['pan-beans']).toMatchObject({
      amount: beans(10),
      full: beans(24),
      load: 1,
      counted: 1,
    })
    expect(accountOf(down, 'beans').corrected).toBe(beans(-14))
    const up = onward(down, correct(beans(30)))
    expect(up.state.pans['pan-beans']).toMatchObject({
      amount: beans(30),
      full: beans(30),
      counted: 2,
    })
    expect(accountOf(up, 'beans')).toMatchObject({ corrected: beans(6), loaded: beans(24) })
    expect(inPan(onward(given(), correct(0)), 'pan-beans')).toBe(0)
  })

  it('[K3] is not counted to what it holds already', () => {
    expect(codeOf(when(given(), correct(beans(24))))).toBe('already-so')
    expect(codeOf(when(onward(given(), correct(0)), correct(-0)))).toBe('already-so')
  })

  it('[K4] may be counted to less than is on tickets: then nothing more is accepted', () => {
    const short = onward(
      given(send(choose('bean-and-pepper'), choose('bean-and-pepper'))),
      correct(beans(1)),
    )
    expect(codeOf(when(short, send(choose('bean-and-pepper'))))).toBe('sold-out')
    expect(codeOf(when(short, send(choose('harbor-tuna'))))).toBeNull()
  })
})

describe('an amount', () => {
  const pan = {
    id: 'pan-beans',
    component: 'beans',
    size: 'third',
    depthIn: 4,
    usualPortions: 24,
  } as const
  const most = mostInPan(running(given()), pan)

  it.each([
    ['less than nothing', -1],
    ['a part of a milligram', 0.5],
    ['more than the pan can hold', most + 1],
    ['more than a number can say', 1e21],
  ])('[K5] that is %s is absurd, however it is said', (_, amount) => {
    const refusal = { code: 'absurd-amount', pan: 'pan-beans', most }
    for (const command of [load(amount), changePan(amount), correct(amount)])
      expect(refusalOf(when(openedService(), command))).toEqual(refusal)
  })

  it('[K5] of nothing is counted, never loaded', () => {
    expect(codeOf(when(openedService(), load(0)))).toBe('absurd-amount')
    expect(codeOf(when(given(), changePan(0)))).toBe('absurd-amount')
    expect(codeOf(when(given(), correct(0)))).toBeNull()
    expect(codeOf(when(given(), correct(most)))).toBeNull()
  })

  it('[K5] is for a pan of this line', () => {
    for (const type of ['load', 'changePan', 'correct'] as const)
      expect(refusalOf(when(given(), { type, pan: 'pan-kale', amount: 1 }))).toEqual({
        code: 'unknown',
        what: 'pan',
        id: 'pan-kale',
      })
  })

  it('[K6] at most is half again what the pan usably holds by its density, or 500 pieces', () => {
    // Third-size, 4 in: 125 fl oz usable (maker's table in lib/measure/pans.ts) of 172 g a cup of 8 fl oz.
    expect(most).toBe(Math.round((125 / 8) * 172 * 1000 * 1.5))
    const most500 = mostInPan(running(given()), { ...pan, component: 'pita' })
    expect(most500).toBe(500)
    // A ninth-size pan has no known capacity at 6 in: 20 L of 1 g/mL stand in.
    const unknown = mostInPan(running(given()), {
      ...pan,
      component: 'slaw',
      size: 'ninth',
      depthIn: 6,
    })
    expect(unknown).toBe(30_000_000)
  })

  it('does not start a build over again', () => {
    const told = given(send(choose('bean-and-pepper')))
    expect(onward(told, changePan(beans(9))).state.tickets).toEqual(told.state.tickets)
    expect(at('21A')).toEqual({ ticket: 21, letter: 'A' })
  })
})
