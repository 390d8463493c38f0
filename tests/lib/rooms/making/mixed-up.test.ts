import { describe, expect, it } from 'vitest'
import { at as foodAt, minute, read, until, whenAt } from '#tests/support/food.ts'
import {
  accountOf,
  at,
  buildIn,
  choose,
  codeOf,
  eventsOf,
  type Given,
  given,
  needs,
  ofPortions,
  onward,
  ready,
  refusalOf,
  send,
  when,
} from '#tests/support/service.ts'

const chicken = choose('garden-chicken')
const made = (name: string): Given[] => [
  { type: 'start', ...at(name), read: true },
  { type: 'finish', ...at(name) },
]
const mixedUp = (...names: string[]): Given => ({
  type: 'remakeMixedUp',
  builds: names.map((name) => at(name)),
})
const two = given(send(chicken, chicken), send(chicken), ...made('1A'), ...made('1B'))

describe('nobody knows which is which', () => {
  it('[S140] all of them are thrown out and made again with one command', () => {
    const decision = when(two, mixedUp('1A', '1B'))
    expect(eventsOf(decision)).toEqual([
      { type: 'buildRemade', ...at('1A'), from: 'made', mixedUpWith: ['1B'] },
      { type: 'buildRemade', ...at('1B'), from: 'made', mixedUpWith: ['1A'] },
    ])
    const told = onward(two, mixedUp('1A', '1B'))
    for (const name of ['1A', '1B'])
      expect(buildIn(told, name)).toMatchObject({ state: 'waiting', remakes: 1, took: [] })
    expect(accountOf(told, 'slaw')).toMatchObject({
      wasted: ofPortions('slaw', 2),
      used: 0,
      onTickets: ofPortions('slaw', 3),
    })
    const again = onward(told, ...made('1A'), ...made('1B'))
    expect(accountOf(again, 'slaw').used).toBe(ofPortions('slaw', 2))
  })

  it('[S140] one that was made again by its own says nothing of others', () => {
    expect(eventsOf(when(two, { type: 'remake', ...at('1A') }))).toEqual([
      { type: 'buildRemade', ...at('1A'), from: 'made' },
    ])
  })

  it('[S140] one that no longer fits its guest waits held', () => {
    const milkApart = needs({ code: 'milk', handling: 'keep-apart', reason: 'allergy' })
    const suits = choose(
      'garden-chicken',
      { cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no' },
      { base: 'rice', ...milkApart },
    )
    const shelf = ready(send(suits), send(chicken), ...made('1A'), ...made('2A'), {
      type: 'setBackup',
      component: 'slaw',
      ready: false,
    })
    expect(buildIn(shelf, '1A').hold).toBe(null)
    const told = onward(shelf, mixedUp('1A', '2A'))
    expect(buildIn(told, '1A')).toMatchObject({ state: 'waiting', hold: { reason: 'contact' } })
    expect(buildIn(told, '2A')).toMatchObject({ state: 'waiting', hold: null })
  })

  it('[S141] takes two or more, each named once counted once', () => {
    const nothing = { code: 'mixed-up-with-nothing' }
    expect(refusalOf(when(two, mixedUp()))).toEqual(nothing)
    expect(refusalOf(when(two, mixedUp('1A')))).toEqual(nothing)
    expect(refusalOf(when(two, mixedUp('1A', '1A')))).toEqual(nothing)
    expect(eventsOf(when(two, mixedUp('1A', '1B', '1A')))).toHaveLength(2)
  })

  it('[S141] throws none out where one isn’t made or isn’t there', () => {
    expect(refusalOf(when(two, mixedUp('1A', '2A')))).toEqual({
      code: 'wrong-state',
      build: '2A',
      state: 'waiting',
    })
    const gone = onward(two, { type: 'handOver', ...at('1B') })
    expect(codeOf(when(gone, mixedUp('1A', '1B')))).toBe('wrong-state')
    expect(codeOf(when(two, mixedUp('1A', '1C')))).toBe('unknown build')
    expect(codeOf(when(two, mixedUp('1A', '7A')))).toBe('unknown ticket')
  })

  it('[S142] a held one among them is thrown out too, and waits with its hold', () => {
    const held = onward(two, {
      type: 'tellNeed',
      ...at('1B'),
      asked: 'needs',
      needs: [{ code: 'milk', handling: 'keep-apart', reason: null }],
    })
    const told = onward(held, mixedUp('1A', '1B'))
    expect(buildIn(told, '1A')).toMatchObject({ state: 'waiting', hold: null })
    expect(buildIn(told, '1B')).toMatchObject({ state: 'waiting', hold: { reason: 'need' } })
    expect(accountOf(told, 'slaw')).toMatchObject({ wasted: ofPortions('slaw', 2), used: 0 })
    const [, answered] = eventsOf(when(held, mixedUp('1A', '1B')))
    expect(answered).toMatchObject({ type: 'stopAcknowledged', mixedUpWith: ['1A'] })
  })

  it('[S142] one past its time stays to be initialled, and none is thrown out without', () => {
    const tuna = choose('harbor-tuna')
    const timed = foodAt(given(), 12, {
      type: 'startTimeClock',
      what: 'pan',
      id: 'pan-tuna',
      leftAt: minute(10),
      from: 'cold',
      rule: '4h',
      ...read(40, { at: minute(9) }),
    })
    const shelf = foodAt(timed, 20, send(tuna, tuna), ...made('1A'), ...made('1B'))
    const past = { code: 'past-throw-out', id: '1A' }
    expect(codeOf(whenAt(shelf, 249, mixedUp('1A', '1B')))).toBe(null)
    expect(refusalOf(whenAt(shelf, 250, mixedUp('1A', '1B')))).toEqual(past)
    const isDue = until(shelf, 251)
    expect(isDue.state.toThrowOut['build/1A']).toBeDefined()
    expect(refusalOf(whenAt(isDue, 252, mixedUp('1A', '1B')))).toEqual(past)
  })
})
