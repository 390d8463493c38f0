import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { everyNeed, saysOf, unionOf } from '#lib/needs/says.ts'
import { type PanFood, toppedUp, topUpProblem } from '#lib/needs/top-up.ts'
import { stampOf } from '#lib/safety/date-marks.ts'
import { kitchen } from '#tests/support/kitchens.ts'
import { at } from '#tests/support/readings.ts'

const { station } = kitchen({
  said: { cheese: { milk: 'contains' }, leaf: { almond: 'may-contain' } },
  traits: { heart: ['poultry'] },
})
const NEEDS = everyNeed(station)

const hot: PanFood = {
  heldBy: 'hot',
  clock: null,
  dateMark: stampOf('2026-10-05', 'UTC'),
  finishedAt: at('11:00'),
  says: { milk: 'free', egg: 'contains' },
  guarded: true,
}
const onTime = (throwOut: string): PanFood => ({
  ...hot,
  heldBy: 'time',
  clock: { rule: '4h', startedAt: at(throwOut) - 4 * 3_600_000, throwOutAt: at(throwOut) },
})

describe('topping up', () => {
  it('[F22] the oldest clock, date and batch govern, whichever was in the pan', () => {
    const older = {
      ...onTime('14:00'),
      dateMark: stampOf('2026-10-03', 'UTC'),
      finishedAt: at('09:00'),
    }
    for (const [inPan, added] of [
      [onTime('15:00'), older],
      [older, onTime('15:00')],
    ] as const)
      expect(toppedUp(inPan, added)).toMatchObject({
        heldBy: 'time',
        clock: { throwOutAt: at('14:00') },
        dateMark: { lastDay: '2026-10-03' },
        finishedAt: at('09:00'),
      })
  })

  it('[F22] one clock binds the whole pan, and hot on hot stays hot', () => {
    expect(toppedUp(onTime('15:00'), hot)).toMatchObject({ heldBy: 'time', clock: { rule: '4h' } })
    expect(toppedUp(hot, hot)).toMatchObject({ heldBy: 'hot', clock: null })
  })

  it('[F22] the union of allergens governs, and unknown where either doesn’t say', () => {
    const both = unionOf(
      { milk: 'free', egg: 'contains', soy: 'free', wheat: 'free', fish: 'may-contain' },
      { milk: 'contains', egg: 'free', soy: 'free', fish: 'unknown', walnut: 'free' },
    )
    expect(both).toEqual({
      milk: 'contains',
      egg: 'contains',
      soy: 'free',
      wheat: 'unknown',
      fish: 'unknown',
      walnut: 'unknown',
    })
  })

  it('[F22] what components declare is united: groups, kinds, diets and claims', () => {
    const of = (component: string): PanFood => ({ ...hot, says: saysOf(station, component) })
    expect(toppedUp(of('leaf'), of('cheese')).says).toMatchObject({
      milk: 'contains',
      almond: 'may-contain',
      egg: 'free',
      vegan: 'contains',
      halal: 'unknown',
    })
    expect(toppedUp(of('leaf'), of('heart')).says).toMatchObject({
      vegetarian: 'contains',
      milk: 'free',
    })
    expect(Object.keys(toppedUp(of('leaf'), of('heart')).says)).toEqual(NEEDS)
  })

  it('[F22] free only where both are declared free, and contains where either contains', () => {
    const states = fc.constantFrom('contains', 'may-contain', 'free', 'unknown', undefined)
    const any = fc
      .array(states, { minLength: NEEDS.length, maxLength: NEEDS.length })
      .map((list) =>
        Object.fromEntries(
          NEEDS.flatMap((code, place) => (list[place] ? [[code, list[place]]] : [])),
        ),
      )
    fc.assert(
      fc.property(any, any, (one, other) => {
        const both = unionOf(one, other)
        for (const code of NEEDS) {
          const said = [one[code], other[code]]
          expect(both[code] === 'free').toBe(said.every((each) => each === 'free'))
          expect(both[code] === 'contains').toBe(said.includes('contains'))
        }
      }),
      { seed: 17 },
    )
  })

  it('[F22] a guarded pan stays so only with food that was guarded too', () => {
    expect(toppedUp(hot, hot).guarded).toBe(true)
    expect(toppedUp(hot, { ...hot, guarded: false }).guarded).toBe(false)
    expect(toppedUp({ ...hot, guarded: false }, hot).guarded).toBe(false)
  })

  it('[F20] food on time alone isn’t added to hot or cold, nor anything past its time', () => {
    const now = at('14:00')
    expect(topUpProblem(hot, onTime('15:00'), now)).toBe('not-back-to-hot-or-cold')
    expect(topUpProblem(onTime('15:00'), hot, now)).toBe('needs-clock')
    expect(topUpProblem(onTime('15:00'), onTime('15:30'), now)).toBeNull()
    expect(topUpProblem(onTime('14:00'), hot, now)).toBe('past-throw-out')
    expect(topUpProblem(onTime('15:00'), onTime('14:00'), now)).toBe('past-throw-out')
    expect(topUpProblem(hot, hot, now)).toBeNull()
    expect(topUpProblem(hot, { ...hot, heldBy: 'cold' }, now)).toBe('other-holding')
  })
})
