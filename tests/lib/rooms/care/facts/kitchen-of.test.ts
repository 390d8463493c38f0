import { describe, expect, it } from 'vitest'
import { kitchenMet, kitchenOf, type Making } from '#lib/rooms/care/facts/kitchen-of.ts'
import { EMPTY_STOCK } from '#lib/service/food-state.ts'
import type { RunningState, Wiped } from '#lib/service/state.ts'
import { stockWith } from '#tests/support/happened.ts'
import { ready, running } from '#tests/support/service.ts'

const clean = running(ready())
const mark = { component: 'chicken', by: 'cheddar' }

const wiping = (...wiped: Wiped[]): RunningState => ({ ...clean, wiped })
const wiped = (over: Partial<Wiped> = {}): Wiped => ({
  ...mark,
  where: 'line',
  from: 10,
  until: 20,
  ...over,
})
const marksOf = (state: RunningState, making: Making) => {
  const { soiled, soiledBehind, lent } = kitchenMet(state, making)
  return { soiled, soiledBehind, lent }
}
const NOTHING = { soiled: [], soiledBehind: [], lent: [] }

describe('what food met', () => {
  const soiled = stockWith(clean, 'pan-chicken', { soiledBy: ['cheddar'], loadedIn: 10 })
  const soiledBehind = stockWith(
    clean,
    'back-up-chicken',
    { soiledBy: ['cheddar'], loadedIn: 10 },
    'backup',
  )
  const lent: RunningState = {
    ...clean,
    lent: { one: { ...mark, pans: ['pan-chicken'], since: 1, sinceIn: 10 } },
  }

  it.each([
    ['soiled', soiled],
    ['soiledBehind', soiledBehind],
    ['lent', lent],
  ] as const)('[S174] is %s where that was so by when it was finished', (field, state) => {
    expect(marksOf(state, { madeIn: 9 })).toEqual(NOTHING)
    const met = { ...NOTHING, [field]: [mark] }
    expect(marksOf(state, { madeIn: 10 })).toEqual(met)
    expect(marksOf(state, {})).toEqual(met)
  })

  it('[S174] is what nobody knows the beginning of, however early it was made', () => {
    const pan = { ...EMPTY_STOCK, soiledBy: ['cheddar'] }
    const unloaded = { ...clean, pans: { ...clean.pans, 'pan-chicken': pan } }
    expect(marksOf(unloaded, { madeIn: 0 })).toEqual({ ...NOTHING, soiled: [mark] })
    const unsaid = { ...clean, lent: { one: { ...mark, pans: ['pan-chicken'], since: 1 } } }
    expect(marksOf(unsaid, { madeIn: 0 })).toEqual({ ...NOTHING, lent: [mark] })
  })

  it('[S174] is what was wiped since, where it was there at any time while that was made', () => {
    const isMet = (making: Making, over: Partial<Wiped> = {}) =>
      marksOf(wiping(wiped(over)), making).soiled.length === 1
    expect(isMet({ begunIn: 1, madeIn: 9 })).toBe(false)
    expect(isMet({ begunIn: 1, madeIn: 10 })).toBe(true)
    expect(isMet({ begunIn: 12, madeIn: 15 })).toBe(true)
    expect(isMet({ begunIn: 20, madeIn: 25 })).toBe(true)
    expect(isMet({ begunIn: 21, madeIn: 25 })).toBe(false)
    expect(isMet({ madeIn: 9 })).toBe(false)
    expect(isMet({ begunIn: 21 })).toBe(false)
    expect(isMet({})).toBe(true)
    expect(isMet({}, { from: 0, until: 0 })).toBe(true)
  })

  it.each([
    ['line', 'soiled'],
    ['behind', 'soiledBehind'],
    ['lent', 'lent'],
  ] as const)('[S174] on the line, behind it or of a lent scoop: %s is %s', (where, field) => {
    const state = wiping(wiped({ where }))
    expect(marksOf(state, {})).toEqual({ ...NOTHING, [field]: [mark] })
    expect(kitchenOf(state)).toMatchObject(NOTHING)
  })

  it('[S174] is told once, and each scoop in each pan is one', () => {
    const bySlaw = { ...mark, by: 'slaw' }
    const inRice = { ...mark, component: 'rice' }
    const again = stockWith(wiping(wiped(), wiped({ from: 30, until: 40 })), 'pan-chicken', {
      soiledBy: ['slaw', 'cheddar'],
    })
    expect(marksOf(again, {}).soiled).toEqual([bySlaw, mark])
    expect(marksOf(wiping(wiped(), wiped(bySlaw), wiped(inRice), wiped()), {}).soiled).toEqual([
      mark,
      bySlaw,
      inRice,
    ])
  })
})

describe('a kitchen', () => {
  /** The same, with nothing of it known from before. */
  const anew = (): RunningState => ({ ...clean, station: { ...clean.station } })

  // What is judged is kept by kitchen, so that another one costs a whole judgement of every build.
  it('is the same object while nothing of it changes, of the newest twenty-four', () => {
    const state = anew()
    const known = kitchenOf(state)
    const others = Array.from({ length: 24 }, (_, at) => ({ ...state, backups: { [`c${at}`]: 1 } }))
    for (const other of others.slice(0, 23)) kitchenOf(other)
    expect(kitchenOf({ ...state })).toBe(known)
    for (const other of others) kitchenOf(other)
    const later = kitchenOf({ ...state })
    expect(later).not.toBe(known)
    expect(later).toEqual(known)
  })

  it('of a state stays the same, also as met by food where nothing was in a pan', () => {
    const state = anew()
    const known = kitchenOf(state)
    for (let at = 0; at < 24; at += 1) kitchenOf({ ...state, backups: { [`c${at}`]: 1 } })
    expect(kitchenOf(state)).toBe(known)
    expect(kitchenMet(state, { begunIn: 1, madeIn: 2 })).toBe(known)
  })
})
