import { describe, expect, it } from 'vitest'
import { componentOf, findPan, itemOf, pansOf } from '#lib/station/find.ts'
import { nameIn } from '#lib/station/name-in.ts'
import { portionOf, portionsOf } from '#lib/station/portion.ts'
import { demoStation } from '#tests/support/service.ts'

describe('one portion', () => {
  const cheddar = componentOf(demoStation, 'cheddar')

  it('[M15] of what is scooped is level scoops by the density, rounded once to the milligram', () => {
    // 1/24 quart is 1/6 cup; 113 g a cup.
    expect(portionOf(cheddar)).toEqual({ unit: 'mg', amount: 18_833 })
    // Two level #16 scoops are half a cup; 202 g a cup.
    expect(portionOf(componentOf(demoStation, 'rice'))).toEqual({ unit: 'mg', amount: 101_000 })
    // Two rounded scoops would be 37,666.
    const twice = {
      ...cheddar,
      portion: { tool: 'scoop', number: 24, level: 2, gPerCup: 113, source: 'as above' },
    } as const
    expect(portionOf(twice)).toEqual({ unit: 'mg', amount: 37_667 })
  })

  it('[M16] of what is weighed is its weight, in whole milligrams', () => {
    expect(portionOf(componentOf(demoStation, 'slaw'))).toEqual({ unit: 'mg', amount: 45_000 })
    const light = {
      ...cheddar,
      portion: { tool: 'tongs', grams: 14.1748, source: 'half an ounce' },
    } as const
    expect(portionOf(light)).toEqual({ unit: 'mg', amount: 14_175 })
  })

  it('[M17] of what is counted is its pieces, and a lidded cup counts as one', () => {
    expect(portionOf(componentOf(demoStation, 'pita'))).toEqual({ unit: 'piece', amount: 1 })
    expect(portionOf(componentOf(demoStation, 'yogurt-sauce'))).toEqual({
      unit: 'piece',
      amount: 1,
    })
    const three = { ...cheddar, portion: { tool: 'piece', pieces: 3 } } as const
    expect(portionOf(three)).toEqual({ unit: 'piece', amount: 3 })
  })

  it('is there for each component of a station', () => {
    expect(Object.keys(portionsOf(demoStation))).toEqual(
      demoStation.components.map((one) => one.id),
    )
    for (const { amount } of Object.values(portionsOf(demoStation)))
      expect(Number.isSafeInteger(amount) && amount > 0).toBe(true)
  })
})

describe('what is looked up by id', () => {
  it('[M18] is the name of a component, an item, or what a pan holds, else the id itself', () => {
    const name = nameIn(demoStation)
    expect(['slaw', 'harbor-tuna', 'pan-pita', 'kale'].map(name)).toEqual([
      'Sesame slaw',
      'Harbor tuna',
      'Pita',
      'kale',
    ])
    expect(nameIn(null)('slaw')).toBe('slaw')
  })

  it('is a fault of the program where the document is known to have it', () => {
    expect(() => componentOf(demoStation, 'kale')).toThrow('kale')
    expect(() => itemOf(demoStation, 'kale')).toThrow('kale')
    expect(findPan(demoStation, 'kale')).toBeUndefined()
  })

  it('[M19] stands in the order of the line, left to right', () => {
    expect(pansOf(demoStation).map((pan) => pan.component)).toEqual([
      ...['pita', 'rice', 'chicken', 'beans', 'peppers'],
      ...['tuna', 'slaw', 'cheddar', 'almonds', 'yogurt-sauce'],
    ])
  })
})
