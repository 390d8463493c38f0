import { describe, expect, it } from 'vitest'
import { EMPTY_LARDER, type LarderState } from '#lib/larder/lot.ts'
import {
  cameToday,
  comparedWith,
  foodsInOrder,
  nextToReceive,
  receivingFood,
  receivingShown,
} from '#lib/larder/receiving-view.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { larderAfter } from '#tests/support/larder.ts'
import { railStation } from '#tests/support/orders.ts'
import { demoStation } from '#tests/support/service.ts'

const NOW = Date.parse('2026-11-29T15:00:00Z')
const DAY = 86_400_000

const shown = (state: LarderState = EMPTY_LARDER, document: StationDocument = railStation) =>
  receivingShown(document, state, NOW)

const came = (ingredient: string, at: number, sentBack = false): LarderState['deliveries'] => {
  const food = {
    ingredient,
    name: ingredient,
    same: 'same',
    comes: 'cold',
    read: null,
    solid: null,
    useBy: null,
    lot: 'A',
    packs: null,
  } as const
  return larderAfter([
    [
      at,
      sentBack
        ? { type: 'deliverySentBack', food, why: 'damaged' }
        : { type: 'deliveryReceived', food },
    ],
  ]).deliveries
}

describe('what is received', () => {
  it('[DV10] is told in line order, each food once, and none left away', () => {
    const told = foodsInOrder(shown()).map(({ ingredient }) => ingredient)
    expect(told.toSorted()).toEqual(railStation.ingredients.map(({ id }) => id).toSorted())
    expect(shown().wells.map(({ id }) => id)).toEqual(railStation.line.wells.map(({ id }) => id))
    const oil = shown().wells.flatMap(({ pans }) =>
      pans.filter(({ foods }) => foods.some((one) => one.ingredient === 'canola-oil')),
    )
    // It goes into chicken and into peppers: under the pan that is met first.
    expect(oil.map(({ component }) => component)).toEqual(['chicken'])
  })

  it('[DV10] next is what didn’t come yet today, once around the line', () => {
    const foods = foodsInOrder(shown())
    const [first, second, third] = foods
    const last = foods.at(-1)
    if (!first || !second || !third || !last) throw new Error('the station has few foods')
    expect(nextToReceive(shown(), first.ingredient)?.ingredient).toBe(second.ingredient)
    const some = shown({ ...EMPTY_LARDER, deliveries: came(second.ingredient, NOW) })
    expect(nextToReceive(some, first.ingredient)?.ingredient).toBe(third.ingredient)
    expect(nextToReceive(some, last.ingredient)?.ingredient).toBe(first.ingredient)
    const yesterday = shown({ ...EMPTY_LARDER, deliveries: came(second.ingredient, NOW - DAY) })
    expect(nextToReceive(yesterday, first.ingredient)?.ingredient).toBe(second.ingredient)
  })

  it('[DV10] nothing is next where all came', () => {
    const deliveries = Object.assign(
      {},
      ...railStation.ingredients.map(({ id }) => came(id, NOW)),
    ) as LarderState['deliveries']
    expect(nextToReceive(shown({ ...EMPTY_LARDER, deliveries }), 'pita')).toBeNull()
  })

  it('[DV10] how it comes is as it came last, never by what went back', () => {
    const of = (state: LarderState) =>
      foodsInOrder(shown(state)).find(({ ingredient }) => ingredient === 'pita')
    expect(of(EMPTY_LARDER)).toMatchObject({ comes: null, deliveries: [] })
    expect(of({ ...EMPTY_LARDER, deliveries: came('pita', NOW) })?.comes).toBe('cold')
    const back = of({ ...EMPTY_LARDER, deliveries: came('pita', NOW, true) })
    expect(back?.comes).toBeNull()
    expect(back && cameToday(back, shown())?.sentBack).toBe('damaged')
  })

  it('[DV10] a label that nobody read, or too long ago, is told as such', () => {
    const readOn = (date: string | null): StationDocument => ({
      ...railStation,
      ingredients: railStation.ingredients.map((one) => ({ ...one, readOn: date })),
    })
    const labels = (date: string | null) =>
      new Set(foodsInOrder(shown(EMPTY_LARDER, readOn(date))).map(({ label }) => label))
    expect(labels('2026-11-20')).toEqual(new Set(['read']))
    expect(labels('2026-01-20')).toEqual(new Set(['too-old']))
    expect(labels(null)).toEqual(new Set(['unread']))
  })

  it('[DV21] what came is compared with last time, else with the label that was read, else with nothing', () => {
    const of = (deliveries: LarderState['deliveries'], label: 'read' | 'unread' | 'too-old') =>
      comparedWith({ deliveries: deliveries.pita ?? [], label })
    expect(of(came('pita', NOW), 'unread')).toBe('last-time')
    expect(of({}, 'read')).toBe('label')
    expect(of({}, 'too-old')).toBe('label')
    expect(of({}, 'unread')).toBeNull()
    expect(of(came('pita', NOW, true), 'unread')).toBeNull()
  })

  it('[DV20] it is known what a line holds hot or cold: itself, or what it goes into', () => {
    const cold = (id: string) => receivingFood([demoStation], id)?.cold
    expect(cold('cheddar')).toBe('itself')
    expect(cold('tuna')).toBe('in-it')
    expect(cold('pita')).toBeNull()
    expect(cold('almonds')).toBeNull()
  })

  it('[DV22] is held against the strictest limits of all stations that list it', () => {
    const loose = {
      ...{ bound: 'at-most' as const, tenths: { F: 430, C: 40 }, document: 'City code' },
      ...{ paragraph: '7', certainty: 'seen' as const },
    }
    const own: StationDocument = {
      ...railStation,
      safety: {
        ...railStation.safety,
        limits: {
          receivedCold: {
            bound: 'at-most',
            tenths: { F: 400, C: 44 },
            document: 'County code',
            paragraph: '12',
            certainty: 'seen',
          },
        },
      },
    }
    expect(receivingFood([own, railStation], 'pita')?.limits.receivedCold.tenths.F).toBe(400)
    expect(receivingFood([railStation], 'pita')?.limits.receivedCold.tenths.F).toBe(410)
    const both = receivingFood([railStation, own], 'pita')?.limits.receivedCold
    expect(both).toMatchObject({ tenths: { F: 400, C: 44 }, document: 'County code' })
    const inC: StationDocument = {
      ...own,
      safety: { ...own.safety, limits: { receivedCold: loose } },
    }
    expect(receivingFood([own, inC], 'pita')?.limits.receivedCold.tenths).toEqual({ F: 400, C: 40 })
    const noPita = { ...own, ingredients: own.ingredients.filter(({ id }) => id !== 'pita') }
    expect(receivingFood([railStation, noPita], 'pita')?.limits.receivedCold.tenths.F).toBe(410)
    const told = foodsInOrder(receivingShown(railStation, EMPTY_LARDER, NOW, [railStation, own]))
    expect(told.every(({ limits }) => limits?.receivedCold.tenths.F === 400)).toBe(true)
    expect(foodsInOrder(shown()).every((one) => one.limits === undefined)).toBe(true)
    expect(receivingFood([own], 'no-such')).toBeNull()
  })
})
