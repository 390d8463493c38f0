import { describe, expect, it } from 'vitest'
import { mixedUpView } from '#lib/rooms/shelf/views/mixed-up.ts'
import { at as foodAt, minute, read } from '#tests/support/food.ts'
import {
  at,
  choose,
  type Given,
  given,
  needs,
  OPENED_AT,
  onward,
  ready,
  running,
  send,
  type Told,
} from '#tests/support/service.ts'

const chicken = choose('garden-chicken')
const beans = choose('bean-and-pepper')
const made = (name: string): Given[] => [
  { type: 'start', ...at(name), read: true },
  { type: 'finish', ...at(name) },
]
const shelf = ready(
  send(chicken, beans),
  send(choose('garden-chicken', { slaw: 'no' }), chicken),
  ...['1A', '1B', '2A'].flatMap(made),
)
const seen = (told: Told, picked: string, now = OPENED_AT) =>
  mixedUpView(running(told), picked, now)
const names = (told: Told, picked: string) =>
  seen(told, picked)?.builds.map(({ name, isAlike }) => `${name}${isAlike ? ' alike' : ''}`)

describe('not sure which is which', () => {
  it('[H20] proposes what looks like the one that was picked, then what else stands made', () => {
    expect(names(shelf, '2A')).toEqual(['2A alike', '1A alike', '1B'])
    expect(names(shelf, '1B')).toEqual(['1B alike', '1A', '2A'])
    expect(seen(shelf, '1A')?.builds[0]).toEqual({
      ...at('1A'),
      name: '1A',
      item: 'Garden chicken',
      isAlike: true,
      isKeptApart: false,
      isHeld: false,
    })
  })

  it('[H20] is over where the one that was picked isn’t made any more', () => {
    expect(seen(shelf, '2B')).toBe(null)
    expect(seen(onward(shelf, { type: 'handOver', ...at('1A') }), '1A')).toBe(null)
    expect(names(onward(shelf, { type: 'handOver', ...at('1A') }), '2A')).toEqual([
      '2A alike',
      '1B',
    ])
  })

  it('[H21] has held ones among them, and says which are kept apart', () => {
    const held = onward(shelf, {
      type: 'tellNeed',
      ...at('1A'),
      asked: 'needs',
      needs: [{ code: 'milk', handling: 'keep-apart', reason: null }],
    })
    expect(seen(held, '2A')?.builds[1]).toMatchObject({
      name: '1A',
      isAlike: true,
      isHeld: true,
      isKeptApart: true,
    })
    const apart = choose(
      'garden-chicken',
      { cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no' },
      { base: 'rice', ...needs({ code: 'milk', handling: 'keep-apart', reason: 'allergy' }) },
    )
    const kept = ready(send(apart), ...made('1A'))
    expect(seen(kept, '1A')?.builds[0]).toMatchObject({ isHeld: false, isKeptApart: true })
  })

  it('[H21] leaves out what is past its time, and names what looks alike of it', () => {
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
    const both = foodAt(timed, 20, send(tuna, beans), ...made('1A'), ...made('1B'))
    const later = foodAt(both, 30, send(tuna), ...made('2A'))
    expect(seen(later, '2A', minute(249))?.past).toEqual([])
    expect(seen(later, '1B', minute(250))?.builds.map(({ name }) => name)).toEqual(['1B'])
    expect(seen(later, '2A', minute(250))?.past).toEqual(['1A', '2A'])
    expect(seen(later, '1B', minute(250))?.past).toEqual([])
  })
})
