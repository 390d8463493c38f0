import { describe, expect, it } from 'vitest'
import { amountTyped, askedAs, intoWhich, takingOf } from '#components/larder/take-entry.ts'
import type { PlannedHere } from '#lib/rooms/day/views/services-here.ts'

const held = { amount: 5_000_000, unit: 'mg', scale: 'F' } as const
const pieces = { amount: 24, unit: 'piece', scale: 'F' } as const

describe('how much of a lot', () => {
  it.each([
    ['', 5_000_000],
    ['  ', 5_000_000],
    // 1 lb is 0.45359237 kg (international avoirdupois pound, 1959).
    ['2', 907_185],
    ['0.5', 226_796],
  ])('[LA54] %j of 11 lb is %s mg', (text, mg) => {
    expect(amountTyped(held, text)).toBe(mg)
  })

  it('[LA54] is typed in kilograms where the thermometer is in Celsius, and in pieces of what is counted', () => {
    expect(amountTyped({ ...held, scale: 'C' }, '1.5')).toBe(1_500_000)
    expect(amountTyped(pieces, '12')).toBe(12)
    expect(amountTyped(pieces, '')).toBe(24)
  })

  it.each(['0', '-1', 'two', '1,5x', '1e9', '.'])('[LA54] %j is no amount', (text) => {
    expect(amountTyped(held, text)).toBeNull()
    expect(amountTyped(pieces, text)).toBeNull()
  })

  it('[LA54] more than there is is an amount: the server says that it isn’t there', () => {
    expect(amountTyped(pieces, '25')).toBe(25)
  })
})

describe('where it goes, and under which id', () => {
  const planned = (service: string) => ({ service }) as PlannedHere

  it('[LA54] into the service that is open, then those that are planned; a closed one isn’t offered', () => {
    const here = { station: null, at: 0, planned: [planned('s-a'), planned('s-b')] }
    const into = (followed: { readonly service: string; readonly isOpen: boolean } | null) =>
      intoWhich({ ...here, followed }).map(({ service }) => service)
    expect(into({ service: 's-now', isOpen: true })).toEqual(['s-now', 's-a', 's-b'])
    expect(into({ service: 's-over', isOpen: false })).toEqual(['s-a', 's-b'])
    expect(into(null)).toEqual(['s-a', 's-b'])
  })

  it('[LA54] the same that wasn’t answered goes under its id again; another amount, reason or service doesn’t', () => {
    let count = 0
    const newId = () => {
      count += 1
      return `id-${count}`
    }
    const bare = { why: null, initials: '' } as const
    const first = askedAs(null, 's-a', takingOf('a', 5, bare), newId)
    expect(askedAs(first, 's-a', takingOf('a', 5, bare), newId)).toEqual(first)
    const others = [
      askedAs(first, 's-a', takingOf('a', 6, bare), newId),
      askedAs(first, 's-b', takingOf('a', 5, bare), newId),
      askedAs(first, 's-a', takingOf('a', 5, { ...bare, why: 'not-found' }), newId),
      askedAs(first, 's-a', takingOf('a', 5, { ...bare, initials: 'KT' }), newId),
    ]
    expect(new Set([first, ...others].map(({ id }) => id)).size).toBe(5)
  })
})
