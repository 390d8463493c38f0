import { describe, expect, it } from 'vitest'
import { batchSteps, nextStep } from '#lib/rooms/food/views/batch-steps.ts'
import { batchPictures } from '#lib/rooms/food/views/batch-strip.ts'
import { at, fahrenheit, minute, whenAt } from '#tests/support/food.ts'
import {
  codeOf,
  type Given,
  ofPortions,
  openedService,
  refusalOf,
  running,
  type Told,
} from '#tests/support/service.ts'

const chicken = (count: number) => ofPortions('chicken', count)
const cooked = (degrees: number): Given => ({
  type: 'recordCooking',
  batch: 'b1',
  reading: { ...fahrenheit(degrees), heldSeconds: 20 },
  initials: 'KT',
})
const finish = (over: Partial<Extract<Given, { type: 'finishBatch' }>> = {}): Given => ({
  type: 'finishBatch',
  batch: 'b1',
  amount: chicken(24),
  ...over,
})

describe('a batch of several loads', () => {
  const begun = at(openedService(), 1, {
    type: 'startBatch',
    batch: 'b1',
    component: 'chicken',
    loads: 3,
    startedAt: minute(-30),
  })
  const started = at(begun, 1, cooked(168))
  const doneOf = (told: Told) => told.state.batches.b1?.loadsDone

  it('[B34] is finished load by load, or at once', () => {
    const one = at(started, 2, finish({ amount: chicken(12), loads: 1 }))
    expect(doneOf(one)).toBe(1)
    expect(one.state.batches.b1).toMatchObject({ amount: chicken(12), finishedAt: minute(2) })
    expect(batchSteps(running(one), 'b1')).toContain('finish')
    expect(batchPictures(running(one), minute(3))).toMatchObject([{ stage: 'making', loads: 2 }])
    const all = at(at(one, 8, cooked(168)), 9, cooked(168), finish({ amount: chicken(36) }))
    expect(doneOf(all)).toBe(3)
    expect(batchSteps(running(all), 'b1')).not.toContain('finish')
  })

  it('[B34] is finished at once only where each load has a reading of its own', () => {
    const all = finish({ amount: chicken(36) })
    const lacks = (told: Told, command: Given = all) => refusalOf(whenAt(told, 9, command))
    const unread = (lacking: number) => ({
      code: 'cannot-load',
      component: 'chicken',
      problem: { code: 'loads-unread', lacking },
    })
    expect(lacks(begun)).toMatchObject({ problem: { code: 'not-cooked', why: 'no-reading' } })
    expect(lacks(started)).toEqual(unread(2))
    expect(nextStep(running(started), 'b1')).toBe('finish')
    expect(batchSteps(running(started), 'b1')).toContain('cook')
    const spots = at(at(started, 4, cooked(168)), 4, cooked(170))
    expect(lacks(spots), 'two spots of one load').toEqual(unread(1))
    const low = at(at(started, 4, cooked(168)), 6, cooked(120))
    expect(lacks(low), 'one fell short').toEqual(unread(1))
    expect(codeOf(whenAt(low, 9, finish({ amount: chicken(24), loads: 2 })))).toBeNull()
    const read = at(at(started, 4, cooked(168)), 6, cooked(169))
    expect(batchSteps(running(read), 'b1')).not.toContain('cook')
    expect(doneOf(at(read, 9, all))).toBe(3)
    const one = at(started, 2, finish({ amount: chicken(12), loads: 1 }))
    expect(lacks(at(one, 4, cooked(168))), 'after the first').toEqual(unread(1))
  })

  it('[B34] spends the readings of a load that is finished, whenever that is said to have been', () => {
    const later = (told: Told, minutes: number, over: Parameters<typeof finish>[0]) =>
      codeOf(whenAt(told, minutes, finish(over)))
    const early = at(at(begun, 5, cooked(168)), 6, finish({ loads: 1, finishedAt: minute(3) }))
    expect(later(early, 9, { loads: 2 }), 'finished before it was read').toBe('cannot-load')
    const one = at(at(begun, 1, cooked(168)), 2, finish({ amount: chicken(12), loads: 1 }))
    const two = at(at(one, 10, cooked(168)), 11, finish({ loads: 2 }))
    expect(two.state.batches.b1?.finishedAt).toBe(minute(11))
    expect(later(two, 12, { amount: chicken(36), loads: 3 }), 'the third').toBe('cannot-load')
  })

  it('[B34] has no more loads than were started, and finishing the same again changes nothing', () => {
    expect(codeOf(whenAt(started, 2, finish({ loads: 4 })))).toBe('absurd-amount')
    const one = at(started, 2, finish({ amount: chicken(12), loads: 1 }))
    expect(codeOf(whenAt(one, 3, finish({ amount: chicken(12), loads: 1 })))).toBe('already-so')
    const next = at(one, 3, cooked(168))
    expect(codeOf(whenAt(next, 3, finish({ amount: chicken(12), loads: 2 })))).toBeNull()
  })

  it('[B34] whose loads are finished one by one has each of them read, and read again where it fell short', () => {
    expect(codeOf(whenAt(begun, 2, finish({ amount: chicken(12), loads: 1 })))).toBe('cannot-load')
    const one = at(started, 2, finish({ amount: chicken(12), loads: 1 }))
    expect(batchSteps(running(one), 'b1')).toContain('cook')
    const second = finish({ amount: chicken(24), loads: 2 })
    expect(codeOf(whenAt(one, 9, second)), 'unread').toBe('cannot-load')
    const short = at(one, 9, cooked(120))
    expect(short.state.batches.b1?.cooked).toBe(false)
    expect(codeOf(whenAt(short, 9, second)), 'not cooked through').toBe('cannot-load')
    expect(codeOf(whenAt(at(short, 12, cooked(167)), 12, second))).toBeNull()
  })

  it('[B21] thrown out is waste, with what it gave and why', () => {
    const one = at(started, 2, finish({ amount: chicken(12), loads: 1 }))
    const out = { type: 'throwOut', what: 'batch', id: 'b1', reason: 'quality' } as const
    const gone = at(one, 3, { ...out, initials: 'KT' })
    expect(gone.state.accounts.chicken).toMatchObject({ wasted: chicken(12), loaded: chicken(12) })
    expect(gone.state.wastes.chicken).toEqual({ quality: chicken(12) })
    const weighed = at(one, 3, { ...out, amount: chicken(10), initials: 'KT' })
    expect(weighed.state.wastes.chicken).toEqual({ quality: chicken(10) })
    const absurd = { ...out, amount: chicken(99), initials: 'KT' }
    expect(codeOf(whenAt(one, 3, absurd))).toBe('absurd-amount')
  })
})
