import { describe, expect, it } from 'vitest'
import { byEye, daySums, levelOf, thrownOutSoFar } from '#lib/rooms/day/views/day-amounts.ts'
import { placeOf } from '#lib/service/place.ts'
import { minute } from '#tests/support/food.ts'
import {
  at,
  choose,
  type Given,
  given,
  ofPortions,
  running,
  send,
  type Told,
} from '#tests/support/service.ts'

const levelIn = (told: Told, id: string) => {
  const state = running(told)
  const place = placeOf(state, { what: 'pan', id })
  if (!place) throw new Error(`no ${id}`)
  return levelOf(state, place, minute(90))
}

const make = (name: string): readonly Given[] => [
  { type: 'start', ...at(name) },
  { type: 'finish', ...at(name) },
]

const MADE = [
  send(choose('garden-chicken')),
  ...make('1A'),
  send(choose('garden-chicken')),
  ...make('2A'),
]

const SPILT: Given = {
  type: 'waste',
  pan: 'pan-chicken',
  amount: ofPortions('chicken', 2),
  reason: 'spill',
}

describe('a pan’s day in amounts', () => {
  it('[EN20] falls with each build that took from it, from what was loaded to what is in it now', () => {
    const told = given(...MADE)
    const { amount = 0, full = 0 } = running(told).pans['pan-chicken'] ?? {}
    const level = levelIn(told, 'pan-chicken')
    expect(level?.isKnown).toBe(true)
    const amounts = level?.points.map((one) => one.amount) ?? []
    expect(amounts).toEqual([full, full - ofPortions('chicken', 1), amount, amount])
    expect(level?.points.at(-1)?.at).toBe(minute(90))
    expect(daySums(running(told), 'chicken').used).toBe(ofPortions('chicken', 2))
  })

  it('[EN20] once something was spilled only its load and now are known', () => {
    const told = given(...MADE, SPILT)
    const level = levelIn(told, 'pan-chicken')
    expect(level?.isKnown).toBe(false)
    expect(level?.points).toHaveLength(2)
    expect(level?.points.at(-1)?.amount).toBe(running(told).pans['pan-chicken']?.amount)
  })

  it('[EN21] what was thrown out is told with its cost; where nobody said one it is at least that', () => {
    expect(thrownOutSoFar(running(given()))).toEqual({ foods: [], cents: 0, isAll: true })
    const told = given(SPILT)
    const each = running(told).station.components.find(({ id }) => id === 'chicken')?.costCents
    expect(thrownOutSoFar(running(told))).toEqual({
      foods: [{ component: 'chicken', amount: ofPortions('chicken', 2) }],
      cents: each ? Math.round(2 * each) : 0,
      isAll: each !== null,
    })
    const state = running(told)
    const components = state.station.components.map((one) => ({ ...one, costCents: null }))
    const unpriced = { ...state, station: { ...state.station, components } }
    expect(thrownOutSoFar(unpriced)).toMatchObject({ cents: 0, isAll: false })
  })

  it('[EN22] by eye twelve of twenty is eight to sixteen, and never below none', () => {
    expect(byEye(12, 20)).toEqual({ least: 8, most: 16 })
    expect(byEye(1, 20)).toEqual({ least: 0, most: 5 })
    expect(byEye(3, 4)).toEqual({ least: 1, most: 5 })
  })
})
