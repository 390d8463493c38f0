import { expect, it } from 'vitest'
import { placeOf } from '#lib/service/place.ts'
import { at, read, until, whenAt } from '#tests/support/food.ts'
import { codeOf, type Given, ready, running } from '#tests/support/service.ts'

const OUT = read(120)

it('[F90] food that is read out of its limits as it comes out of a back-up pan takes that pan off sale', () => {
  const told = ready()
  for (const type of ['topUp', 'changePan'] as const) {
    const decision = whenAt(told, 20, {
      type,
      pan: 'pan-chicken',
      ...(type === 'topUp' ? { amount: 85_000 } : {}),
      from: 'back-up-chicken',
      ...OUT,
    })
    expect(codeOf(decision)).toBe('cannot-load')
    expect(decision).toMatchObject({
      also: [
        { type: 'temperatureRead', what: 'backup', id: 'back-up-chicken', inLimits: false },
        { type: 'takenOffSale', what: 'backup', id: 'back-up-chicken', why: 'out-of-limits' },
      ],
    })
  }
  expect(running(told).backupPans['back-up-chicken']?.offSale).toBe(null)
})

it('[F90] in its limits it goes in, and nothing else is recorded of the back-up pan', () => {
  const decision = whenAt(ready(), 20, {
    type: 'changePan',
    pan: 'pan-chicken',
    from: 'back-up-chicken',
    ...read(150),
  })
  expect(decision).toMatchObject({ events: [{ type: 'panChanged', from: 'back-up-chicken' }] })
})

it('[F90] out of a batch it is the batch’s, which then waits for a decision', () => {
  const decision = whenAt(ready(), 20, {
    type: 'changePan',
    pan: 'pan-chicken',
    amount: 850_000,
    batch: 'opening-chicken',
    ...OUT,
  })
  expect(codeOf(decision)).toBe('cannot-load')
  expect(decision).toMatchObject({
    also: [
      { type: 'temperatureRead', what: 'batch', id: 'opening-chicken', inLimits: false },
      { type: 'takenOffSale', what: 'batch', id: 'opening-chicken' },
    ],
  })
})

it('[F90] a reading out of limits isn’t lost where its food went off sale meanwhile for want of one', () => {
  // Its reading is missed while somebody holds the probe.
  const emptied: Given = { type: 'correct', pan: 'pan-chicken', amount: 0 }
  const told = until(at(ready(), 5, emptied), 150)
  for (const [what, id, from] of [
    ['batch', 'opening-chicken', { batch: 'opening-chicken', amount: 850_000 }],
    ['backup', 'back-up-chicken', { from: 'back-up-chicken' }],
  ] as const) {
    expect(placeOf(running(told), { what, id })?.offSale?.why).toBe('reading-missed')
    const decision = whenAt(told, 151, { type: 'load', pan: 'pan-chicken', ...from, ...OUT })
    expect('refusal' in decision).toBe(true)
    expect(decision).toMatchObject({
      also: [
        { type: 'temperatureRead', what, id, inLimits: false },
        { type: 'takenOffSale', what, id, why: 'out-of-limits' },
      ],
    })
    const good = whenAt(told, 151, { type: 'load', pan: 'pan-chicken', ...from, ...read(150) })
    expect('refusal' in good).toBe(true)
    expect(good).not.toHaveProperty('also')
  }
})
