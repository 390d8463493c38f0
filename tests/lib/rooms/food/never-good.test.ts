import { describe, expect, it } from 'vitest'
import { at, minute, read, readAll, until, whenAt } from '#tests/support/food.ts'
import {
  buildIn,
  choose,
  codeOf,
  eventsOf,
  type Given,
  given,
  ofPortions,
  send,
} from '#tests/support/service.ts'

const ONE = { ticket: 1, letter: 'A' }
const chicken = (count: number) => ofPortions('chicken', count)

describe('food that is off sale', () => {
  const cold = at(given(), 10, {
    type: 'readTemperature',
    what: 'pan',
    id: 'pan-chicken',
    ...read(105),
  })
  const waste = (reason: 'sample' | 'staff-meal' | 'spill', from: object): Given => ({
    type: 'waste',
    amount: chicken(1),
    reason,
    ...from,
  })

  it('[U6] is eaten by nobody, but may be spilt', () => {
    for (const from of [{ pan: 'pan-chicken' }, { component: 'chicken' }]) {
      for (const reason of ['sample', 'staff-meal'] as const) {
        expect(codeOf(whenAt(cold, 11, waste(reason, from)))).toBe('off-sale')
        expect(codeOf(whenAt(given(), 11, waste(reason, from)))).toBeNull()
      }
      expect(codeOf(whenAt(cold, 11, waste('spill', from)))).toBeNull()
    }
  })

  it('[B13] is named by a name of its own: one that every object has names nothing', () => {
    for (const id of ['constructor', 'toString', '__proto__'])
      for (const what of ['pan', 'backup'] as const)
        expect(
          codeOf(
            whenAt(given(), 5, { type: 'throwOut', what, id, reason: 'other', initials: 'KT' }),
          ),
        ).toBe(`unknown ${what}`)
  })
})

describe('a batch that was never good', () => {
  const loaded = at(
    given(),
    2,
    { type: 'startBatch', batch: 'b1', component: 'tuna', loads: 1, startedAt: minute(-60) },
    { type: 'finishBatch', batch: 'b1', amount: ofPortions('tuna', 30), finishedAt: minute(-30) },
    {
      type: 'changePan',
      pan: 'pan-tuna',
      amount: ofPortions('tuna', 12),
      batch: 'b1',
      ...read(38),
    },
  )
  const out = (reason: 'not-cooked' | 'quality'): Given => ({
    type: 'throwOut',
    what: 'batch',
    id: 'b1',
    reason,
    initials: 'KT',
  })

  it('[B21] takes what was loaded of it off sale, and holds what was made of that', () => {
    const made = at(
      loaded,
      3,
      send(choose('harbor-tuna')),
      { type: 'start', ...ONE },
      {
        type: 'finish',
        ...ONE,
      },
    )
    const gone = at(made, 4, out('not-cooked'))
    expect(gone.state.pans['pan-tuna']?.offSale).toMatchObject({ why: 'out-of-limits' })
    expect(buildIn(gone, '1A').hold).toMatchObject({ reason: 'off-sale' })
    expect(at(made, 4, out('quality')).state.pans['pan-tuna']?.offSale).toBeNull()
  })
})

describe('a build that is made anew', () => {
  it('[B32] isn’t what was to be thrown out before: that is signed for, and it is handed over', () => {
    let told = at(
      given(),
      6,
      send(choose('harbor-tuna')),
      { type: 'start', ...ONE },
      {
        type: 'finish',
        ...ONE,
      },
    )
    const old = buildIn(told, '1A').since
    told = at(told, 100, ...readAll(told))
    told = at(told, 200, ...readAll(told))
    told = until(told, 250)
    expect(Object.keys(told.state.toThrowOut)).toContain('build/1A')
    const again = { ...told.state.toThrowOut['build/1A'], since: old - 1 } as never
    const fresh = {
      ...told,
      state: { ...told.state, toThrowOut: { ...told.state.toThrowOut, 'build/1A': again } },
    }
    const signed = { type: 'throwOut', what: 'build', id: '1A', reason: 'past-time' } as const
    const events = eventsOf(whenAt(fresh, 251, { ...signed, initials: 'KT' }))
    expect(events.map(({ type }) => type)).toEqual(['discardSignedOff'])
    const bound = eventsOf(whenAt(told, 251, { ...signed, initials: 'KT' }))
    expect(bound.map(({ type }) => type)).toContain('buildRemade')
  })
})
